package report

// Which finding is the same as one of another day, whatever else was edited.

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strings"

	"plancheck/internal/diag"
)

// Fingerprints are the identities of findings, one each, in hexadecimal. A fingerprint stays as it is while
// lines come and go elsewhere in the file, and while the figures of the finding change: it goes
// by the rule, the file, and the path of what the finding is about; in the text itself, by what the line says.
// Of findings that are alike in all that, the first, the second … have their own. name is how a file is called.
func Fingerprints(findings []diag.Finding, name func(*diag.File) string) []string {
	prints := make([]string, len(findings))
	seen := make(map[string]int)
	for i := range findings {
		f := &findings[i]
		key := f.Rule + "\x00" + f.Subject
		if f.Span.Known() {
			key += "\x00" + name(f.Span.File)
			if f.Subject == "" {
				line, _ := f.Span.Position()
				key += "\x00" + strings.Join(strings.Fields(f.Span.File.Line(line)), " ")
			}
		}
		seen[key]++
		sum := sha256.Sum256(fmt.Appendf(nil, "%s\x00%d", key, seen[key]))
		prints[i] = hex.EncodeToString(sum[:16])
	}
	return prints
}

// Named is the name under which a file was read.
func Named(f *diag.File) string { return f.Name }

// Since tells findings that are new from those that were there before, and which of those are gone. name is
// how a file is called, then and now.
func Since(before, after []diag.Finding, name func(*diag.File) string) (fresh, gone []diag.Finding, same int) {
	old, now := Fingerprints(before, name), Fingerprints(after, name)
	known := make(map[string]bool, len(old))
	for _, p := range old {
		known[p] = true
	}
	for i, p := range now {
		if known[p] {
			same++
			delete(known, p)
		} else {
			fresh = append(fresh, after[i])
		}
	}
	for i, p := range old {
		if known[p] {
			gone = append(gone, before[i])
		}
	}
	return fresh, gone, same
}
