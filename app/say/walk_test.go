package say_test

import (
	"go/ast"
	"go/constant"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// code is what a walk over the program's own files has found.
type code struct {
	said     map[string]string // texts that are said, and where
	literals map[string]bool   // every text there is
	consts   map[string]string // texts with a name, by package folder and name
}

// speaking are the functions of the window whose arguments, from the number on, are texts that it
// says: labels of fields, headings of groups.
var speaking = map[string]int{
	"It": 0, "With": 0, "Key": 0, "length": 1, "angle": 1, "count": 1, "maybe": 1, "maybeAngle": 1, "choice": 1, "flag": 1, "words": 1,
	"size": 1, "guard": 0, "screwGroup": 0, "named": 1, "command": 0,
	"tell": 0, "tellOnce": 0, "choose": 0, "edit": 0, "button": 0, "heading": 0, "one": 0, "All": 0,
}

// fields are what is said of a composite literal.
var fields = map[string]bool{"Label": true, "Hint": true, "keys": true, "does": true}

// walk reads the program's files; where gives the folders whose texts are said.
func walk(t *testing.T) code {
	t.Helper()
	c := code{map[string]string{}, map[string]bool{}, map[string]string{}}
	files := parse(t)
	for name, f := range files {
		c.gather(filepath.Dir(name), f)
	}
	for name, f := range files {
		if strings.HasPrefix(filepath.ToSlash(name), "../../app/") {
			c.listen(name, f)
		}
	}
	return c
}

func parse(t *testing.T) map[string]*ast.File {
	t.Helper()
	out := map[string]*ast.File{}
	root := filepath.Join("..", "..")
	for _, dir := range []string{"app", "model", "render", "export", "cmd"} {
		err := filepath.WalkDir(filepath.Join(root, dir), func(file string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
				return err
			}
			out[file], err = parser.ParseFile(token.NewFileSet(), file, nil, 0)
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// gather takes every text, and those that have a name.
func (c code) gather(dir string, f *ast.File) {
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ValueSpec:
			for i, name := range n.Names {
				if i < len(n.Values) {
					if text, ok := c.text(dir, n.Values[i]); ok {
						c.consts[dir+"."+name.Name] = text
					}
				}
			}
		case ast.Expr:
			if text, ok := c.text(dir, n); ok {
				c.literals[text] = true
			}
		}
		return true
	})
}

// text gives the text of an expression that always reads the same.
func (c code) text(dir string, e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		if e.Kind != token.STRING {
			return "", false
		}
		text, err := strconv.Unquote(e.Value)
		return text, err == nil
	case *ast.Ident:
		text, ok := c.consts[dir+"."+e.Name]
		return text, ok
	case *ast.BinaryExpr:
		a, okA := c.text(dir, e.X)
		b, okB := c.text(dir, e.Y)
		if e.Op != token.ADD || !okA || !okB {
			return "", false
		}
		return constant.StringVal(constant.BinaryOp(constant.MakeString(a), token.ADD, constant.MakeString(b))), true
	}
	return "", false
}

// listen takes what is said.
func (c code) listen(file string, f *ast.File) {
	say := func(e ast.Expr) {
		if text, ok := c.text(filepath.Dir(file), e); ok && text != "" {
			c.said[text] = file
		}
	}
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.CallExpr:
			if nameOf(n.Fun) == "feature" { // its other texts are keys and sizes of the design file
				say(n.Args[0])
			}
			from, ok := speaking[nameOf(n.Fun)]
			for i, a := range n.Args {
				if list, many := a.(*ast.CompositeLit); many && nameOf(n.Fun) == "All" {
					for _, e := range list.Elts {
						say(e)
					}
				}
				if ok && i >= from {
					say(a)
				}
			}
		case *ast.KeyValueExpr:
			if k, ok := n.Key.(*ast.Ident); ok && (fields[k.Name] || k.Name == "Title" && strings.Contains(file, "panel")) {
				say(n.Value)
			}
		}
		return true
	})
}

func nameOf(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.SelectorExpr:
		return e.Sel.Name
	}
	return ""
}
