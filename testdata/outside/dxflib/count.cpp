// Counts what is in DXF files, as dxflib reads them. (It stands in a folder of its own
// because Go takes no C++ in a package without cgo.)
//
//     count FILE...
//
// Prints one JSON object a line: {"file", "counts": {"TYPE LAYER": n}}. Types are
// CIRCLE, POLYLINE (both kinds, which dxflib does not tell apart), OPEN for a
// polyline that is not closed, VERTEX for their corners, and OTHER. Exit status 1
// when a file cannot be read.
//
// Needs Debian's libdxflib-dev (tried with 3.26.4): g++ count.cpp -ldxflib
#include <dxflib/dl_creationadapter.h>
#include <dxflib/dl_dxf.h>

#include <iostream>
#include <map>
#include <string>

class Counter : public DL_CreationAdapter {
public:
  std::map<std::string, int> counts;

  void count(const std::string &type) { counts[type + " " + getAttributes().getLayer()]++; }

  void addCircle(const DL_CircleData &) override { count("CIRCLE"); }
  void addPolyline(const DL_PolylineData &p) override { count(p.flags & 1 ? "POLYLINE" : "OPEN"); }
  void addVertex(const DL_VertexData &) override { count("VERTEX"); }

  void addPoint(const DL_PointData &) override { count("OTHER"); }
  void addLine(const DL_LineData &) override { count("OTHER"); }
  void addArc(const DL_ArcData &) override { count("OTHER"); }
  void addEllipse(const DL_EllipseData &) override { count("OTHER"); }
  void addSpline(const DL_SplineData &) override { count("OTHER"); }
  void addInsert(const DL_InsertData &) override { count("OTHER"); }
  void addText(const DL_TextData &) override { count("OTHER"); }
  void addMText(const DL_MTextData &) override { count("OTHER"); }
  void addHatch(const DL_HatchData &) override { count("OTHER"); }
};

int main(int argc, char **argv) {
  for (int i = 1; i < argc; i++) {
    Counter counter;
    DL_Dxf dxf;
    if (!dxf.in(argv[i], &counter)) {
      std::cerr << argv[i] << ": cannot be read\n";
      return 1;
    }
    // Names of layers and of these files need no escaping.
    std::cout << "{\"file\": \"" << argv[i] << "\", \"counts\": {";
    const char *comma = "";
    for (const auto &c : counter.counts) {
      std::cout << comma << "\"" << c.first << "\": " << c.second;
      comma = ", ";
    }
    std::cout << "}}\n";
  }
}
