// Package dimension is described in DEVELOPERS.md.
package dimension
