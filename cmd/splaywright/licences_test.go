package main

import (
	"os/exec"
	"strings"
	"testing"

	"splaywright/assets"
)

// Every module that is linked into the program stands on the about page with its terms.
func TestEveryModuleStandsOnTheAboutPage(t *testing.T) {
	out, err := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}", ".").Output()
	if err != nil {
		t.Skipf("the go tool does not list what is built in: %v", err)
	}
	named := map[string]string{}
	for _, l := range assets.Licences() {
		named[l.What] = l.Terms
	}
	built := strings.Fields(string(out))
	if len(built) < 10 {
		t.Fatalf("only %d packages are built in; the list is broken", len(built))
	}
	for _, module := range built {
		if named[module] == "" {
			t.Errorf("%s is built in and assets/licences.txt does not name its terms", module)
			named[module] = "told"
		}
	}
}
