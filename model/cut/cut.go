// Package cut is described in DEVELOPERS.md.
package cut
