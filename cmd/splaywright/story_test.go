package main

import (
	"errors"
	"flag"
	"os"
	"os/exec"
	"strconv"
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
	testscript.Run(t, testscript.Params{Dir: dir, UpdateScripts: *update, Cmds: map[string]func(*testscript.TestScript, bool, []string){"code": code}})
}

// code runs splaywright and wants an exit code: code 1 check FILE.
func code(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: code N COMMAND ...")
	}
	got := 0
	if err := ts.Exec("splaywright", args[1:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v: %v", args, err)
		}
		got = exit.ExitCode()
	}
	if strconv.Itoa(got) != args[0] {
		ts.Fatalf("exit code %d, want %s", got, args[0])
	}
}
