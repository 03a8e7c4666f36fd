package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"

	"github.com/spf13/cobra"

	"splaywright/model/file"
)

// What a person asks for that is not there: a command, a file, a folder, a flag. Each refusal says
// what was read, why it is refused, and what would do.

// one takes one FILE.
func one(c *cobra.Command, args []string) error {
	switch {
	case len(args) == 0:
		return fmt.Errorf("%s needs the name of a design file, such as `%s step.yaml` or `%s example:reading-nook-step`",
			c.Name(), c.CommandPath(), c.CommandPath())
	case len(args) > 1:
		return fmt.Errorf("%s takes one design file, and here are %d: %s", c.Name(), len(args), strings.Join(args, ", "))
	}
	return nil
}

// several takes two FILEs or more, up to what stands readably side by side.
func several(c *cobra.Command, args []string) error {
	if len(args) < 2 || len(args) > mostCompared {
		return fmt.Errorf("%s takes two to %d design files, and here are %d; such as `%s old.yaml new.yaml`", c.Name(), mostCompared, len(args), c.CommandPath())
	}
	return nil
}

// atMostOne takes a FILE or none, and a mistyped command for what it is.
func atMostOne(c *cobra.Command, args []string) error {
	switch {
	case len(args) < 2:
		return nil
	case c.HasParent() || exists(args[0]):
		return fmt.Errorf("%s takes one file, and here are %d: %s", c.Name(), len(args), strings.Join(args, ", "))
	}
	return unknownCommand(c, args[0])
}

// flagTrouble says what a flag would take.
func flagTrouble(c *cobra.Command, err error) error {
	why := err.Error()
	if before, _, number := strings.Cut(why, ": strconv."); number {
		why = before + ": a whole number is expected, such as 110"
	}
	if before, _, span := strings.Cut(why, ": time: "); span {
		why = before + ": a time is expected, such as 3s"
	}
	return fmt.Errorf("%s; `%s --help` lists what may be given", why, c.CommandPath())
}

// openable tells why a name is no design file that the window could open.
func openable(root *cobra.Command, name string) error {
	if example, is := strings.CutPrefix(name, "example:"); is {
		return fmt.Errorf("%s: the window opens files; `splaywright new step.yaml --from %s` makes one of a built-in design", name, example)
	}
	info, err := os.Stat(name)
	switch {
	case err == nil && info.IsDir():
		return fileTrouble(name, syscall.EISDIR)
	case err == nil:
		return nil
	case errors.Is(err, fs.ErrNotExist) && filepath.Ext(name) == "" && filepath.Base(name) == name:
		return unknownCommand(root, name)
	}
	return fileTrouble(name, err)
}

// unknownCommand answers a word that is neither a command nor a file.
func unknownCommand(root *cobra.Command, word string) error {
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	why := fmt.Sprintf("%s: there is no such command and no such file; ", word)
	all := "he commands are " + strings.Join(names, ", ")
	var near []string
	if c := file.Nearest(word, names); c != "" {
		near = append(near, fmt.Sprintf("the command `splaywright %s`", c))
	}
	if f := nearestFile(word); f != "" {
		near = append(near, "the file "+f)
	}
	if len(near) > 0 {
		return errors.New(why + "did you mean " + strings.Join(near, " or ") + "? T" + all)
	}
	return errors.New(why + "t" + all)
}

// nearestFile is the design file in the same folder whose name is nearest, "" when none is near.
func nearestFile(name string) string {
	dir := filepath.Dir(name)
	entries, err := os.ReadDir(dir)
	if err != nil {
		return "" // the folder itself is not there, or may not be listed
	}
	byWord := map[string]string{}
	var words []string
	for _, e := range entries {
		stem, is := strings.CutSuffix(e.Name(), ".yaml")
		if !is || e.IsDir() {
			continue
		}
		words = append(words, stem)
		byWord[stem] = filepath.Join(dir, e.Name())
	}
	return byWord[file.Nearest(strings.TrimSuffix(filepath.Base(name), ".yaml"), words)]
}

// fileTrouble says why a design file is not read.
func fileTrouble(name string, err error) error {
	switch {
	case name == "":
		return errors.New("the name of the design file is empty; a name such as step.yaml is expected")
	case errors.Is(err, fs.ErrNotExist) && strings.EqualFold(filepath.Ext(name), ".csv"):
		return fmt.Errorf("%s: there is no such list; the name of a CSV file that is there is expected", name)
	case errors.Is(err, fs.ErrNotExist):
		near := ""
		if f := nearestFile(name); f != "" {
			near = "did you mean " + f + "? "
		}
		return fmt.Errorf("%s: there is no such file; %s`splaywright new %s` makes one from an example", name, near, name)
	case errors.Is(err, syscall.EISDIR):
		return fmt.Errorf("%s: this is a folder; name the design file in it, such as %s", name, filepath.Join(name, "step.yaml"))
	}
	return fmt.Errorf("%s: the file cannot be read (%s); is it yours to read?", name, reason(err))
}

// newTrouble says why a new design is not written.
func newTrouble(name string, err error) error {
	dir := filepath.Dir(name)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("%s: this file is there already, and `new` never overwrites; give another name, or move that file away first", name)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%s: there is no folder %s; make it first, or name a folder that is there", name, dir)
	}
	return fmt.Errorf("%s: the new design cannot be written (%s); choose a place where you may write", name, reason(err))
}

// papersTrouble says why papers are not written into a folder.
func papersTrouble(dir string, err error) error {
	var at *fs.PathError
	if !errors.As(err, &at) {
		return err
	}
	if info, serr := os.Stat(dir); serr == nil && !info.IsDir() {
		return fmt.Errorf("%s: this is a file; --to takes a folder, which is made where it is missing, such as --to papers", dir)
	}
	return fmt.Errorf("%s: this cannot be written (%s); choose a folder where you may write, such as --to papers", at.Path, reason(err))
}

// reason is what the system says, without the name of its call.
func reason(err error) string {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err.Error()
	}
	return err.Error()
}

func exists(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}
