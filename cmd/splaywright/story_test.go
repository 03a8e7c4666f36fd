package main

import (
	"flag"
	"os"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite the golden texts in the stories")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"splaywright": main})
}

// TestStories plays the command-line stories: each file holds commands, inputs and expected output.
func TestStories(t *testing.T) {
	dir := "../../testdata/stories"
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) == 0 {
		t.Fatalf("no stories in %s: %v", dir, err)
	}
	testscript.Run(t, testscript.Params{Dir: dir, UpdateScripts: *update, RequireExplicitExec: false})
}
