package main

import (
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"
)

func TestWatch(t *testing.T) {
	folder := t.TempDir()
	write := func(name, text string) {
		t.Helper()
		path := filepath.Join(folder, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path+"~", []byte(text), 0o644); err != nil { // as an editor does
			t.Fatal(err)
		}
		if err := os.Rename(path+"~", path); err != nil {
			t.Fatal(err)
		}
	}
	write("a.plan", "let a = 1\n")
	checked, done, ended := make(chan bool, 100), make(chan struct{}), make(chan error)
	go func() {
		s := &streams{out: io.Discard, err: io.Discard}
		ended <- watchUntil(done, []string{folder}, s, func() error { checked <- true; return errFound })
	}()
	wait := func(what string) {
		t.Helper()
		select {
		case <-checked:
		case <-time.After(10 * time.Second):
			t.Fatalf("not checked: %s", what)
		}
	}
	wait("at first")
	write("a.plan", "let a = 2\n")
	wait("a plan was saved")
	write("notes.txt", "no plan")
	write(".hidden.plan", "let a = 2\n")
	select {
	case <-checked:
		t.Error("checked for a file that is no plan")
	case <-time.After(4 * settling):
	}
	if err := os.Mkdir(filepath.Join(folder, "new"), 0o755); err != nil {
		t.Fatal(err)
	}
	wait("a folder is new")
	write("new/b.plan", "let b = 1\n")
	wait("a plan in a new folder was saved")
	close(done)
	if err := <-ended; err != nil {
		t.Error(err)
	}
}
