//go:build !nowindow && !linux

package main

func trim() {}
