//go:build !nowindow

package main

/*
#include <features.h>
#ifdef __GLIBC__
#include <malloc.h>
static void trim(void) { malloc_trim(0); }
#else
static void trim(void) {}
#endif
*/
import "C"

// trim gives back what the window's and the drawing system's libraries have freed.
func trim() { C.trim() }
