package page

import (
	"embed"
	"net/http"
	"path"

	"drawerwright/preview/viewer"
)

//go:embed assets
var embedded embed.FS

// kinds are the files that the page is made of, by their endings.
var kinds = map[string]string{".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml"}

// assets are these files by name, and those of the viewer.
var assets = func() map[string][]byte {
	all := map[string][]byte{}
	list, err := embedded.ReadDir("assets")
	for _, e := range list {
		if err == nil {
			all[e.Name()], err = embedded.ReadFile("assets/" + e.Name())
		}
	}
	if err != nil {
		panic(err) // they are part of the program
	}
	all["viewer.js"], all["viewer.css"] = []byte(viewer.Script()), []byte(viewer.Style())
	return all
}()

func serveAsset(name string) http.HandlerFunc {
	return func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", kinds[path.Ext(name)])
		w.Write(assets[name]) // a browser that has gone needs no answer
	}
}
