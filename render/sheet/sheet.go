// Package sheet is described in DEVELOPERS.md.
package sheet
