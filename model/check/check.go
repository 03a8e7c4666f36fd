// Package check is described in DEVELOPERS.md.
package check
