// Package file is described in DEVELOPERS.md.
package file
