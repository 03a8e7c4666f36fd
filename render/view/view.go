// Package view is described in DEVELOPERS.md.
package view
