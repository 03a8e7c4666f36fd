package main

import (
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// layers is the one direction of imports: a package may import only from its own line's group
// members that stand left of it, and from earlier lines.
var layers = [][]string{
	{"assets"},
	{"model/measure", "model/tongue", "model/twos", "model/word"},
	{"model/solid"},
	{"model/stock", "model/stock/lp"},
	{"model/stock/line"},
	{"model/stock/sheet"},
	{"model/timber"},
	{"model/part"},
	{"model/cut", "model/joint"},
	{"model/form", "model/form/formtest"},
	{"model/band", "model/check", "model/file", "model/file/filetest", "model/hold", "model/motion", "model/yield"},
	{"model/resize"},
	{"model"},
	{"model/remedy"},
	{"render/draw"},
	{"render/draw/drawtest"},
	{"render/view", "render/table"},
	{"render/dimension", "render/wood"},
	{"render/sheet", "render/pattern", "render/sketch"},
	{"export/csv", "export/pdf", "export/png", "export/svg", "export/derived", "export/xlsx"},
	{"export/html"},
	{"export/papers"},
	{"app/session"},
	{"app/look", "app/say"},
	{"app/keyed"},
	{"app/field", "app/viewer"},
	{"app/panel"},
	{"app"},
	{"cmd/splaywright/plainlocale"},
	{"cmd/empty", "cmd/splaywright"},
}

const module = "splaywright/"

func TestImportsFlowOneWay(t *testing.T) {
	place := map[string]int{}
	for i, group := range layers {
		for _, p := range group {
			place[p] = i
		}
	}
	seen := 0
	eachGoFile(t, func(pkg, file string, imports []string) {
		from, known := place[pkg]
		if !known {
			t.Errorf("%s: package %s has no place in the order of imports; give it one", file, pkg)
			return
		}
		seen++
		for _, imp := range imports {
			checkImport(t, file, pkg, imp, from, place)
		}
	})
	if seen < 20 {
		t.Fatalf("only %d files were looked at; the walk is broken", seen)
	}
}

func checkImport(t *testing.T, file, pkg, imp string, from int, place map[string]int) {
	t.Helper()
	own, inside := strings.CutPrefix(imp, module)
	if inside {
		to, known := place[own]
		same := known && to == from && own < pkg // within a line only towards the left
		if !known || (to >= from && !same) {
			t.Errorf("%s: %s must not import %s", file, pkg, own)
		}
		return
	}
	switch {
	case strings.HasPrefix(imp, "fyne.io/fyne/v2/app") && !strings.HasPrefix(pkg, "cmd/"):
		t.Errorf("%s: only cmd picks the window's driver", file)
	case strings.HasPrefix(imp, "fyne.io/") && !strings.HasPrefix(pkg, "app") && !strings.HasPrefix(pkg, "cmd/"):
		t.Errorf("%s: the window's library must stay under app and cmd", file)
	case pkg == "app/session" && strings.HasPrefix(imp, "fyne.io/"):
		t.Errorf("%s: session knows nothing of the window", file)
	case pkg == "model/solid" && strings.Contains(imp, ".") && imp != "github.com/go-gl/mathgl/mgl64":
		t.Errorf("%s: the geometry core rests on mgl64 and the standard library alone", file)
	}
}

func eachGoFile(t *testing.T, visit func(pkg, file string, imports []string)) {
	t.Helper()
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "out" || d.Name() == "testdata" || d.Name() == ".git") {
			return filepath.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return nil
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ImportsOnly)
		if err != nil {
			return err
		}
		var imports []string
		for _, s := range f.Imports {
			p, err := strconv.Unquote(s.Path.Value)
			if err != nil {
				return err
			}
			imports = append(imports, p)
		}
		rel, err := filepath.Rel(root, filepath.Dir(file))
		if err != nil {
			return err
		}
		visit(filepath.ToSlash(rel), file, imports)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
