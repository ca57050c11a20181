package main

// plancheck check --watch: checked again at each save.

import (
	"context"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

// settling is how long the files must have been left alone before they are checked again: an editor saves
// in several steps.
const settling = 50 * time.Millisecond

// watch checks now, and again whenever a plan in one of the folders of paths changes, until it is
// interrupted.
func watch(paths []string, s *streams, check func() error) error {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	return watchUntil(ctx.Done(), paths, s, check)
}

func watchUntil(done <-chan struct{}, paths []string, s *streams, check func() error) error {
	// Folders are watched, not files: an editor that saves puts a new file in place of the old one.
	watcher, err := fsnotify.NewWatcher()
	if err != nil {
		return err
	}
	defer watcher.Close()
	for {
		for _, folder := range foldersOf(paths) {
			if err := watcher.Add(folder); err != nil {
				return fmt.Errorf("%s cannot be watched: %w", folder, err)
			}
		}
		if err := check(); err != nil && err != errFound && err != errFailed {
			return err
		}
		fmt.Fprintf(s.err, "checked at %s; waiting for a plan to be saved (Ctrl-C ends)\n", time.Now().Format("15:04:05"))
		if !saved(watcher, done) {
			return nil
		}
		fmt.Fprintln(s.out)
	}
}

// saved waits until a plan changed and all is quiet again; false if it is to end.
func saved(watcher *fsnotify.Watcher, done <-chan struct{}) bool {
	quiet := time.NewTimer(time.Hour)
	quiet.Stop()
	for {
		select {
		case <-done:
			return false
		case event, open := <-watcher.Events:
			if !open {
				return false
			}
			if concerns(event) {
				quiet.Reset(settling)
			}
		case _, open := <-watcher.Errors:
			if !open {
				return false
			}
			quiet.Reset(settling) // some events may be lost: check, to be sure
		case <-quiet.C:
			return true
		}
	}
}

// concerns reports whether something happened to a plan, or a new folder may hold some.
func concerns(event fsnotify.Event) bool {
	if strings.HasPrefix(filepath.Base(event.Name), ".") || event.Op == fsnotify.Chmod {
		return false
	}
	if event.Has(fsnotify.Create) {
		if info, err := os.Stat(event.Name); err == nil && info.IsDir() {
			return true
		}
	}
	return filepath.Ext(event.Name) == ".plan"
}

// foldersOf are the folders in which the plans of paths lie or may come to lie, less what is hidden.
func foldersOf(paths []string) []string {
	var folders []string
	for _, path := range paths {
		folder := folderOf(path)
		if folder != path {
			folders = append(folders, folder)
			continue
		}
		filepath.WalkDir(path, func(below string, d fs.DirEntry, err error) error {
			if err != nil || !d.IsDir() {
				return nil
			}
			if strings.HasPrefix(d.Name(), ".") && below != path {
				return fs.SkipDir
			}
			folders = append(folders, below)
			return nil
		})
	}
	return folders
}

// folderOf is a path itself where it is a folder, else the folder that it lies in.
func folderOf(path string) string {
	if info, err := os.Stat(path); err == nil && info.IsDir() {
		return path
	}
	return filepath.Dir(path)
}
