package main

// A plan as it stood at a revision, from the git repository in which it lies.

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// textAt is what a file in a folder said at a revision.
func textAt(revision, folder, inside string, most int64) (string, error) {
	git := exec.Command("git", "-C", folder, "show", "--end-of-options", revision+":./"+filepath.ToSlash(inside))
	var said bytes.Buffer
	git.Stderr = &said
	out, err := git.StdoutPipe()
	if err != nil {
		return "", err
	}
	if err := git.Start(); err != nil {
		return "", fmt.Errorf("a revision is read by git, which does not start here: %w", errors.Unwrap(err))
	}
	text, err := readAll(out, most)
	if err != nil {
		git.Process.Kill()
	}
	if ended := git.Wait(); err == nil && ended != nil {
		last := strings.Split(strings.TrimSpace(said.String()), "\n")
		return "", fmt.Errorf("git has nothing for it at %s: %s", revision, strings.TrimPrefix(last[0], "fatal: "))
	}
	return text, err
}

// knownRevision says why a revision cannot be read; nil where it can.
func knownRevision(revision, folder string) error {
	git := exec.Command("git", "-C", folder, "rev-parse", "--quiet", "--verify", "--end-of-options", revision+"^{commit}")
	if err := git.Run(); err != nil {
		return fmt.Errorf("git knows no revision %q in %s", revision, folder)
	}
	return nil
}

// revisionOf reads `REVISION:PATH`, as git writes a file at a revision; a file that bears such a name
// comes first.
func revisionOf(path string) (source, error) {
	revision, file, both := strings.Cut(path, ":")
	if _, err := os.Lstat(path); err == nil || !both || revision == "" || file == "" || filepath.VolumeName(path) != "" {
		return onePlan(path)
	}
	file = filepath.Clean(file)
	folder := filepath.Dir(file)
	return source{name: file, folder: folder, at: revision}, knownRevision(revision, folder)
}
