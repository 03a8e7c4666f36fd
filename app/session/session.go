// Package session is an open design: its document, edits, undo and what derives from it.
// It knows nothing of the window.
package session
