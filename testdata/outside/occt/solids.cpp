// Reads STEP files with Open CASCADE Technology. (It stands in a folder of its own because Go
// takes no C++ in a package without cgo.)
//
//     solids FILE...
//
// Prints one JSON object a line, for each solid as it stands in the whole: {"file", "part",
// "piece", "valid", "volume", "bounds": [x, y, z, x, y, z], "cylinders", "planes", "others",
// "open"}. Volumes are by the faces' own surfaces, in mm3; "open" are edges that do not lie in two
// faces, each in another direction; "piece" is empty where a part stands alone. Exit status
// 1 when a file cannot be read.
//
// Needs Debian's libocct-data-exchange-dev (tried with 7.6.3):
//     g++ -isystem /usr/include/opencascade solids.cpp -lTKXDESTEP -lTKXCAF -lTKLCAF -lTKCAF
//         -lTKXSBase -lTKTopAlgo -lTKBRep -lTKG3d -lTKMath -lTKernel
#include <BRepAdaptor_Surface.hxx>
#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <BRep_Tool.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDataStd_Name.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>
#include <TopoDS.hxx>
#include <XCAFApp_Application.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>

#include <cstdio>
#include <string>

static std::string nameOf(const TDF_Label &label) {
  Handle(TDataStd_Name) name;
  if (!label.FindAttribute(TDataStd_Name::GetID(), name))
    return "";
  const TCollection_ExtendedString &wide = name->Get();
  std::string out(wide.LengthOfCString(), '\0');
  Standard_PCharacter to = out.data();
  wide.ToUTF8CString(to);
  std::string quoted;
  for (char c : out) {
    if (c == '"' || c == '\\')
      quoted += '\\';
    quoted += c;
  }
  return quoted;
}

static int openEdges(const TopoDS_Shape &solid) {
  TopTools_IndexedDataMapOfShapeListOfShape faces;
  TopExp::MapShapesAndAncestors(solid, TopAbs_EDGE, TopAbs_FACE, faces);
  int open = 0;
  for (int i = 1; i <= faces.Extent(); i++)
    open += faces(i).Extent() != 2;
  return open;
}

static void print(const char *file, const std::string &part, const std::string &piece, const TopoDS_Shape &solid) {
  int planes = 0, cylinders = 0, others = 0;
  for (TopExp_Explorer e(solid, TopAbs_FACE); e.More(); e.Next()) {
    GeomAbs_SurfaceType type = BRepAdaptor_Surface(TopoDS::Face(e.Current())).GetType();
    (type == GeomAbs_Plane ? planes : type == GeomAbs_Cylinder ? cylinders : others)++;
  }
  GProp_GProps held;
  BRepGProp::VolumeProperties(solid, held, 1e-9);
  Bnd_Box box;
  BRepBndLib::AddOptimal(solid, box, false, false);
  double b[6];
  box.Get(b[0], b[1], b[2], b[3], b[4], b[5]);
  std::printf("{\"file\": \"%s\", \"part\": \"%s\", \"piece\": \"%s\", \"valid\": %s, \"volume\": %.9g, \"bounds\": [%.9g, "
              "%.9g, %.9g, %.9g, %.9g, %.9g], \"planes\": %d, \"cylinders\": %d, \"others\": %d, \"open\": %d}\n",
              file, part.c_str(), piece.c_str(), BRepCheck_Analyzer(solid).IsValid() ? "true" : "false", held.Mass(), b[0],
              b[1], b[2], b[3], b[4], b[5], planes, cylinders, others, openEdges(solid));
}

static void solids(const char *file, const std::string &part, const std::string &piece, const TopoDS_Shape &shape) {
  for (TopExp_Explorer e(shape, TopAbs_SOLID); e.More(); e.Next())
    print(file, part, piece, e.Current());
}

static bool read(const char *file) {
  Handle(XCAFApp_Application) app = XCAFApp_Application::GetApplication();
  Handle(TDocStd_Document) doc;
  app->NewDocument("BinXCAF", doc);
  STEPCAFControl_Reader reader;
  reader.SetNameMode(true);
  if (reader.ReadFile(file) != IFSelect_RetDone || !reader.Transfer(doc))
    return false;
  Handle(XCAFDoc_ShapeTool) tool = XCAFDoc_DocumentTool::ShapeTool(doc->Main());
  TDF_LabelSequence roots;
  tool->GetFreeShapes(roots);
  for (int i = 1; i <= roots.Length(); i++) {
    TDF_LabelSequence pieces;
    if (!XCAFDoc_ShapeTool::GetComponents(roots(i), pieces)) {
      solids(file, nameOf(roots(i)), "", XCAFDoc_ShapeTool::GetShape(roots(i)));
      continue;
    }
    for (int k = 1; k <= pieces.Length(); k++) {
      TDF_Label part;
      XCAFDoc_ShapeTool::GetReferredShape(pieces(k), part);
      solids(file, nameOf(part), nameOf(pieces(k)), XCAFDoc_ShapeTool::GetShape(pieces(k)));
    }
  }
  app->Close(doc);
  return true;
}

int main(int argc, char **argv) {
  bool all = true;
  for (int i = 1; i < argc; i++)
    if (!read(argv[i])) {
      std::fprintf(stderr, "%s cannot be read\n", argv[i]);
      all = false;
    }
  return !all;
}
