package assets

import (
	_ "embed"
	"strings"
)

//go:embed VERSION
var version string

// Version is the program's version, as FyneApp.toml and packages give it.
func Version() string { return strings.TrimSpace(version) }

// AppID names the program to the desktop, as FyneApp.toml and packages give it.
const AppID = "io.splaywright.Splaywright"
