package main

// From the paths on a command line to plans to read, and from a plan to the files that it
// uses.

import (
	"cmp"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/internal/report"
)

// largest is how much text a plan may have, and the files that it uses together: far more
// than anyone writes, and far less than a machine has.
const largest = 64 << 20

const (
	standardInput     = "-"
	standardInputName = "<stdin>"
)

// source is a plan to be read.
type source struct {
	name   string // as a person knows it
	folder string // what the plan uses must lie in here
	inside string // path in the folder; "" where the plan was named by itself
	at     string // the revision in git at which it is read; "" for the file as it is
}

// gather lists the plans that paths stand for: files, folders (every *.plan below, in order,
// without what is hidden), and - for standard input. A plan that is reached twice is listed
// once. What cannot be found is a failure; the rest is listed all the same.
func gather(paths []string) (sources []source, failures []report.Failure) {
	seen := map[string]bool{}
	add := func(s source) {
		key, err := filepath.Abs(s.name)
		if err != nil || s.name == standardInputName {
			key = s.name
		}
		if !seen[key] {
			seen[key] = true
			sources = append(sources, s)
		}
	}
	for _, path := range paths {
		if path == standardInput {
			add(source{name: standardInputName, folder: "."})
			continue
		}
		if path == "" {
			failures = append(failures, report.Failure{Path: `""`, Err: errors.New("an empty path; write `.` for the folder you are in")})
			continue
		}
		path = filepath.Clean(path)
		info, err := os.Stat(path)
		switch {
		case err != nil:
			failures = append(failures, report.Failure{Path: path, Err: reason(err)})
		case !info.IsDir():
			add(source{name: path, folder: filepath.Dir(path)})
		default:
			found, bad := plansBelow(path)
			for _, s := range found {
				add(s)
			}
			failures = append(failures, bad...)
			if len(found)+len(bad) == 0 {
				failures = append(failures, report.Failure{Path: path, Err: errors.New("no *.plan file in this folder or below")})
			}
		}
	}
	return sources, failures
}

// plansBelow walks a folder, never out of it: links to folders are not followed, and links
// to files only where they stay inside.
func plansBelow(folder string) (found []source, failures []report.Failure) {
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, []report.Failure{{Path: folder, Err: reason(err)}}
	}
	defer root.Close()
	fs.WalkDir(root.FS(), ".", func(path string, d fs.DirEntry, err error) error {
		hidden := strings.HasPrefix(d.Name(), ".") && path != "."
		inside := filepath.FromSlash(path)
		switch {
		case err != nil:
			failures = append(failures, report.Failure{Path: filepath.Join(folder, inside), Err: reason(err)})
			if d.IsDir() {
				return fs.SkipDir
			}
		case hidden && d.IsDir():
			return fs.SkipDir
		case hidden || filepath.Ext(path) != ".plan" || d.IsDir():
		default:
			if info, err := root.Stat(inside); err == nil && info.Mode().IsRegular() {
				found = append(found, source{name: filepath.Join(folder, inside), folder: folder, inside: inside})
			}
		}
		return nil
	})
	return found, failures
}

// read takes in the plan's text.
func (s source) read(stdin io.Reader) (*diag.File, error) {
	from := stdin
	switch {
	case s.at != "":
		text, err := textAt(s.at, s.folder, cmp.Or(s.inside, filepath.Base(s.name)), largest)
		return diag.NewFile(s.name, text), err
	case s.name != standardInputName:
		file, err := s.open()
		if err != nil {
			return nil, reason(err)
		}
		defer file.Close()
		from = file
	}
	text, err := readAll(from, largest)
	if err != nil {
		return nil, err
	}
	return diag.NewFile(s.name, text), nil
}

func (s source) open() (*os.File, error) {
	if s.inside == "" {
		return os.Open(s.name)
	}
	return os.OpenInRoot(s.folder, s.inside)
}

// readAll reads a text of at most so many bytes.
func readAll(r io.Reader, most int64) (string, error) {
	var text strings.Builder
	if file, ok := r.(*os.File); ok {
		if info, err := file.Stat(); err == nil && info.Mode().IsRegular() {
			text.Grow(int(min(info.Size(), most)))
		}
	}
	n, err := io.Copy(&text, io.LimitReader(r, most+1))
	switch {
	case err != nil:
		return "", reason(err)
	case n > most:
		return "", fmt.Errorf("more than %d MB of text; a plan, with what it uses, may have that much", largest>>20)
	}
	return text.String(), nil
}

// shelf opens the files that one plan uses, and nothing outside its folder.
type shelf struct {
	folder string
	at     string   // the revision in git at which they are read; "" for the files as they are
	root   *os.Root // opened when it is first needed
	left   int64    // how many bytes may still be read
}

func (s source) shelf() *shelf { return &shelf{folder: s.folder, at: s.at, left: largest} }

func (s *shelf) Close() {
	if s.root != nil {
		s.root.Close()
	}
}

// open is a plan.Opener.
func (s *shelf) open(from *diag.File, name string) (*diag.File, error) {
	beside := "."
	if from.Name != standardInputName {
		var err error
		if beside, err = filepath.Rel(s.folder, filepath.Dir(from.Name)); err != nil {
			return nil, err
		}
	}
	inside := filepath.Join(beside, filepath.FromSlash(name))
	if filepath.IsAbs(filepath.FromSlash(name)) || !filepath.IsLocal(inside) {
		return nil, fmt.Errorf("it lies outside the folder %q; give plancheck a folder that holds both", s.folder)
	}
	text, err := s.text(inside)
	if err != nil {
		return nil, err
	}
	s.left -= int64(len(text))
	return diag.NewFile(filepath.Join(s.folder, inside), text), nil
}

// text is what a file in the folder says.
func (s *shelf) text(inside string) (string, error) {
	if s.at != "" {
		return textAt(s.at, s.folder, inside, s.left)
	}
	if s.root == nil {
		root, err := os.OpenRoot(s.folder)
		if err != nil {
			return "", reason(err)
		}
		s.root = root
	}
	info, err := s.root.Stat(inside)
	if err != nil {
		return "", reason(err)
	}
	if !info.Mode().IsRegular() {
		return "", errors.New("it is not a file")
	}
	file, err := s.root.Open(inside)
	if err != nil {
		return "", reason(err)
	}
	defer file.Close()
	return readAll(file, s.left)
}

var _ plan.Opener = (*shelf)(nil).open

// reason is why the system would not, without the path, which is said already.
func reason(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("there is no such file or folder")
	case errors.Is(err, fs.ErrPermission):
		return errors.New("it may not be read (permission denied)")
	}
	var path *fs.PathError
	if errors.As(err, &path) {
		if path.Err != nil && path.Err.Error() == "path escapes from parent" { // os.Root's own, which has no name
			return errors.New("a link on the way to it leads out of the folder")
		}
		return cmp.Or(path.Err, err)
	}
	return err
}
