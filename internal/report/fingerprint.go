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
// Of findings that are alike in all that, the first, the second … have their own.
func Fingerprints(findings []diag.Finding) []string {
	prints := make([]string, len(findings))
	seen := make(map[string]int)
	for i := range findings {
		f := &findings[i]
		key := f.Rule + "\x00" + f.Subject
		if f.Span.Known() {
			key += "\x00" + f.Span.File.Name
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
