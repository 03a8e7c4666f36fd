// Package timber is described in DEVELOPERS.md.
package timber
