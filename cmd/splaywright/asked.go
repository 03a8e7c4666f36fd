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
	"github.com/spf13/pflag"

	"splaywright/model/file"
	"splaywright/model/word"
)

// What a person asks for that is not there: a command, a file, a folder, a flag. Each refusal says
// what was read, why it is refused, and what would do.

// one takes one FILE.
func one(c *cobra.Command, args []string) error {
	switch {
	case len(args) == 0:
		return fmt.Errorf("%+s needs the name of a design file, such as `%+s step.yaml` or `%+s example:reading-nook-step`",
			c.Name(), c.CommandPath(), c.CommandPath())
	case len(args) > 1:
		return fmt.Errorf("%+s takes one design file, and here are %d: %+s", c.Name(), len(args), strings.Join(args, ", "))
	}
	return nil
}

// several takes two FILEs or more, up to what stands readably side by side.
func several(c *cobra.Command, args []string) error {
	if len(args) < 2 || len(args) > mostCompared {
		return fmt.Errorf("%+s takes two to %d design files, and here are %d; such as `%+s old.yaml new.yaml`", c.Name(), mostCompared, len(args), c.CommandPath())
	}
	return nil
}

// atMostOne takes a FILE or none, and a mistyped command for what it is.
func atMostOne(c *cobra.Command, args []string) error {
	switch {
	case len(args) < 2:
		return nil
	case c.HasParent() || exists(args[0]):
		return fmt.Errorf("%+s takes one file, and here are %d: %+s", c.Name(), len(args), strings.Join(args, ", "))
	}
	return unknownCommand(c, args[0])
}

// flagTrouble says what a flag would take.
func flagTrouble(c *cobra.Command, err error) error {
	return fmt.Errorf("%s; `%+s --help` lists what may be given", flagWords(err), c.CommandPath())
}

// flagWords puts in our words what the library refuses.
func flagWords(err error) string {
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var value *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		return fmt.Sprintf("there is no flag %+s", dashed(unknown.GetSpecifiedName()))
	case errors.As(err, &bare):
		return fmt.Sprintf("something is expected behind the flag %+s", dashed(bare.GetSpecifiedName()))
	case errors.As(err, &value):
		return fmt.Sprintf("%q is not taken by the flag %+s: %s", value.GetValue(), dashed(value.GetFlag().Name), flagLike(value.GetFlag().Value.Type()))
	}
	return err.Error()
}

func dashed(flag string) string {
	if len(flag) == 1 {
		return "-" + flag
	}
	return "--" + flag
}

// flagLike says what a flag of a kind would take.
func flagLike(kind string) string {
	switch kind {
	case "int":
		return "a whole number is expected, such as 110"
	case "duration":
		return "a time is expected, such as 3s"
	case "bool":
		return "true or false is expected"
	}
	return "something else is expected"
}

// openable tells why a name is no design file that the window could open.
func openable(root *cobra.Command, name string) error {
	if example, is := strings.CutPrefix(name, "example:"); is {
		return fmt.Errorf("%+s: the window opens files; `splaywright new step.yaml --from %+s` makes one of a built-in design", name, example)
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
func unknownCommand(root *cobra.Command, typed string) error {
	var names []string
	for _, c := range root.Commands() {
		if c.IsAvailableCommand() {
			names = append(names, c.Name())
		}
	}
	all := strings.Join(names, ", ")
	var near []string
	if c := file.Nearest(typed, names); c != "" {
		near = append(near, fmt.Sprintf("the command `splaywright %+s`", c))
	}
	if f := nearestFile(typed); f != "" {
		near = append(near, fmt.Sprintf("the file %+s", f))
	}
	if len(near) > 0 {
		return fmt.Errorf("%+s: there is no such command and no such file; did you mean %s? The commands are %+s", typed, strings.Join(near, " or "), all)
	}
	return fmt.Errorf("%+s: there is no such command and no such file; the commands are %+s", typed, all)
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
		return listTrouble(name, err)
	case errors.Is(err, fs.ErrNotExist):
		near := ""
		if f := nearestFile(name); f != "" {
			near = fmt.Sprintf("did you mean %+s? ", f)
		}
		return fmt.Errorf("%+s: there is no such file; %s`splaywright new %+s` makes one from an example", name, near, name)
	case errors.Is(err, syscall.EISDIR):
		return fmt.Errorf("%+s: this is a folder; name the design file in it, such as %+s", name, filepath.Join(name, "step.yaml"))
	}
	return fmt.Errorf("%+s: the file cannot be read (%s); is it yours to read?", name, word.OfSystem(err))
}

// listTrouble says why a list of boards or timbers is not read.
func listTrouble(name string, err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%+s: there is no such list; the name of a CSV file that is there is expected", name)
	case errors.Is(err, syscall.EISDIR):
		return fmt.Errorf("%+s: this is a folder; name the CSV file in it, such as %+s", name, filepath.Join(name, "boards.csv"))
	}
	return fileTrouble(name, err)
}

// newTrouble says why a new design is not written.
func newTrouble(name string, err error) error {
	dir := filepath.Dir(name)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("%+s: this file is there already and is not written over; give another name, or move that file away first", name)
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("%+s: there is no folder %+s; make it first, or name a folder that is there", name, dir)
	case errors.Is(err, syscall.ENOSPC):
		return noRoom(name)
	}
	return fmt.Errorf("%+s: the new design cannot be written (%s); choose a place where you may write", name, word.OfSystem(err))
}

// noRoom says what would do where the disk is full.
func noRoom(name string) error {
	return fmt.Errorf("%+s: there is no room left on that disk; make room there, or name another place", name)
}

// papersTrouble says why papers are not written into a folder.
func papersTrouble(dir string, err error) error {
	var at *fs.PathError
	if !errors.As(err, &at) {
		return err
	}
	if info, serr := os.Stat(dir); serr == nil && !info.IsDir() {
		return fmt.Errorf("%+s: this is a file; --to takes a folder, which is made where it is missing, such as --to papers", dir)
	}
	if errors.Is(err, syscall.ENOSPC) {
		return noRoom(at.Path)
	}
	return fmt.Errorf("%+s: this cannot be written (%s); choose a folder where you may write, such as --to papers", at.Path, word.OfSystem(err))
}

func exists(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}
