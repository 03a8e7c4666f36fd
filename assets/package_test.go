package assets

import (
	"encoding/xml"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

func text(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// value gives what stands behind "key = " or "key=" at the beginning of a line.
func value(t *testing.T, text, key string) string {
	t.Helper()
	m := regexp.MustCompile(`(?m)^` + key + ` *= *"?([^"\n]*)"?$`).FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("there is no %s in\n%s", key, text)
	}
	return m[1]
}

func TestFyneAppSaysWhatTheProgramIs(t *testing.T) {
	toml := text(t, "../FyneApp.toml")
	for key, want := range map[string]string{"Version": Version(), "ID": AppID, "Name": "Splaywright"} {
		if got := value(t, toml, key); got != want {
			t.Errorf("FyneApp.toml has %s %q, want %q", key, got, want)
		}
	}
	f, err := os.Open("../" + value(t, toml, "Icon"))
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = f.Close() }()
	if c, err := png.DecodeConfig(f); err != nil || c.Width != 256 || c.Height != 256 {
		t.Errorf("the icon is %d × %d (%v); the package puts it among those of 256", c.Width, c.Height, err)
	}
}

func TestDesktopEntry(t *testing.T) {
	toml, entry := text(t, "../FyneApp.toml"), text(t, "package/"+AppID+".desktop")
	for key, want := range map[string]string{
		"Name": "Splaywright", "Icon": AppID, "Exec": "splaywright %f", "Type": "Application",
		"GenericName": value(t, toml, "GenericName"), "Comment": value(t, toml, "Comment"),
	} {
		if got := value(t, entry, key); got != want {
			t.Errorf("the desktop entry has %s %q, want %q", key, got, want)
		}
	}
	for _, key := range []string{"GenericName", "Comment", "Keywords"} {
		for _, tongue := range []string{"de", "ja"} {
			if value(t, entry, key+`\[`+tongue+`\]`) == value(t, entry, key) {
				t.Errorf("the desktop entry has the English %s for %s", key, tongue)
			}
		}
	}
	if !strings.HasPrefix(entry, "[Desktop Entry]\n") {
		t.Error("the entry has no heading")
	}
}

func TestMetainfo(t *testing.T) {
	var info struct {
		ID       string `xml:"id"`
		Licence  string `xml:"project_license"`
		Launch   string `xml:"launchable"`
		Releases []struct {
			Version string `xml:"version,attr"`
		} `xml:"releases>release"`
	}
	if err := xml.Unmarshal([]byte(text(t, "package/"+AppID+".metainfo.xml")), &info); err != nil {
		t.Fatal(err)
	}
	if info.ID != AppID || info.Launch != AppID+".desktop" || info.Licence != "MIT" {
		t.Errorf("the metainfo names %+v", info)
	}
	if len(info.Releases) == 0 || info.Releases[0].Version != Version() {
		t.Errorf("releases %+v, want %s first", info.Releases, Version())
	}
}

// Every licence of a font goes with the package, and so do the terms of everything that is built in.
func TestThePackageHoldsTheLicences(t *testing.T) {
	pack, install := text(t, "package/pack"), text(t, "package/install")
	fonts, err := filepath.Glob("fonts/OFL*.txt")
	if err != nil || len(fonts) < 2 {
		t.Fatalf("the fonts' licences: %v, %v", fonts, err)
	}
	for _, path := range append(fonts, "licences.txt", "../LICENSE", "package/README.txt", "terms.txt") {
		if !strings.Contains(pack, " "+path) && !strings.Contains(pack, "/"+path+"\"") {
			t.Errorf("pack leaves out %s", path)
		}
		if name := filepath.Base(path); !strings.Contains(install, "put "+name+" share/doc/splaywright/"+name) {
			t.Errorf("install leaves out %s", name)
		}
	}
}

// Installed, the desktop entry names the program where it lies, also in a folder with a space; taken out again, nothing is left.
func TestInstall(t *testing.T) {
	shell, err := exec.LookPath("sh")
	if err != nil {
		t.Skip("there is no shell")
	}
	from, prefix := t.TempDir(), filepath.Join(t.TempDir(), "my own")
	for path, mode := range map[string]os.FileMode{
		"package/install": 0o755, "package/" + AppID + ".desktop": 0o644, "package/" + AppID + ".metainfo.xml": 0o644, "icon.svg": 0o644,
		"icon.png": 0o644, "fonts/OFL.txt": 0o644, "fonts/OFL-BIZUDPGothic.txt": 0o644, "licences.txt": 0o644, "../LICENSE": 0o644,
		"package/README.txt": 0o644,
	} {
		if err := os.WriteFile(filepath.Join(from, filepath.Base(path)), []byte(text(t, path)), mode); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(from, "terms.txt"), []byte("terms"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(from, "splaywright"), []byte("#!/bin/sh\n"), 0o755); err != nil {
		t.Fatal(err)
	}
	install := func(args ...string) {
		t.Helper()
		out, err := exec.Command(shell, append([]string{filepath.Join(from, "install")}, args...)...).CombinedOutput()
		if err != nil {
			t.Fatalf("install %q: %v\n%s", args, err, out)
		}
	}
	install(prefix)
	entry := text(t, filepath.Join(prefix, "share/applications", AppID+".desktop"))
	program := filepath.Join(prefix, "bin/splaywright")
	for _, want := range []string{"Exec=\"" + program + "\" %f", "TryExec=" + program, "Name=Splaywright"} {
		if !strings.Contains(entry, "\n"+want+"\n") {
			t.Errorf("the installed entry has no line %s:\n%s", want, entry)
		}
	}
	if at, err := os.Stat(program); err != nil || at.Mode().Perm() != 0o755 {
		t.Errorf("the program: %v, %v", at, err)
	}
	install("--remove", prefix)
	_ = filepath.Walk(prefix, func(path string, at os.FileInfo, err error) error {
		if err == nil && !at.IsDir() {
			t.Errorf("%s is left", path)
		}
		return nil
	})
}

// The freedesktop project's own tools find no fault with what a desktop is told, where they are installed.
func TestTheDesktopsToolsFindNoFault(t *testing.T) {
	for _, c := range [][]string{
		{"desktop-file-validate", "package/" + AppID + ".desktop"},
		{"appstreamcli", "validate", "--no-net", "package/" + AppID + ".metainfo.xml"},
	} {
		tool, err := exec.LookPath(c[0])
		if err != nil {
			t.Logf("%s is not installed", c[0])
			continue
		}
		if out, err := exec.Command(tool, c[1:]...).CombinedOutput(); err != nil || strings.Contains(string(out), "error:") {
			t.Errorf("%s: %v\n%s", c[0], err, out)
		}
	}
}
