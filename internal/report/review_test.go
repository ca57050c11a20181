package report_test

import (
	"bytes"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"plancheck/internal/diag"
	"plancheck/internal/report"
	"plancheck/rules"
)

func reviewOf(t testing.TB, name string) string {
	t.Helper()
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	p, found := rules.Run(diag.NewFile("piece.plan", string(text)), nil)
	var page bytes.Buffer
	if err := report.Review(&page, p, found, "0123abc"); err != nil {
		t.Fatal(err)
	}
	return page.String()
}

// structure is what a page consists of: its sections, headings, captions, columns, and how many rows,
// findings and boxes it has.
func structure(page string) string {
	var b strings.Builder
	tags := regexp.MustCompile(`<(section|h1|h2|h3|figcaption|th|article|nav|footer)([^>]*)>([^<]*)`)
	for _, m := range tags.FindAllStringSubmatch(page, -1) {
		fmt.Fprintf(&b, "%s%s %s\n", m[1], m[2], strings.TrimSpace(m[3]))
	}
	for _, of := range []string{"<svg", "<tr", "checkbox", `class="mark"`} {
		fmt.Fprintf(&b, "%d x %s\n", strings.Count(page, of), of)
	}
	return b.String()
}

func TestReview(t *testing.T) {
	page := reviewOf(t, "../../fixtures/projects/cabinet/slips.plan")
	golden(t).Assert(t, "review", []byte(structure(page)))
	for _, never := range []string{"<script", "http:", "https:", "src=", "url(", "@import"} {
		if strings.Contains(strings.ReplaceAll(page, `xmlns="http://www.w3.org/2000/svg"`, ""), never) {
			t.Errorf("the page has %q, and must need nothing besides", never)
		}
	}
	// Every link within the page leads somewhere.
	for _, m := range regexp.MustCompile(`href="#([^"]+)"`).FindAllStringSubmatch(page, -1) {
		if !strings.Contains(page, `id="`+m[1]+`"`) {
			t.Errorf("nothing is called %q", m[1])
		}
	}
}

// What a plan says cannot become a part of the page.
func TestReviewEscapes(t *testing.T) {
	p, found := rules.Run(diag.NewFile("a<b>.plan", "plan \"<script>alert(1)</script>\"\nframe leaf { wide 18 ; high 24 ; thick 3/4 ; across { stile left 2 ; space ; stile right 2 } }\n# <b>&\n"), nil)
	var page bytes.Buffer
	if err := report.Review(&page, p, found, "<i>"); err != nil {
		t.Fatal(err)
	}
	for _, never := range []string{"<script", "<b>", "<i>"} {
		if strings.Contains(page.String(), never) {
			t.Errorf("%s came through", never)
		}
	}
}

// The review of a piece of some forty parts is made at once, and is no burden to send.
func TestReviewIsQuickAndSmall(t *testing.T) {
	const plan = "../../fixtures/projects/wardrobe/sound.plan"
	reviewOf(t, plan) // the page's template is read when it is first used
	start := time.Now()
	page := reviewOf(t, plan)
	if took := time.Since(start); took > 200*time.Millisecond {
		t.Errorf("the review took %s", took)
	}
	if len(page) > 2<<20 {
		t.Errorf("the review has %d bytes", len(page))
	}
}

func BenchmarkReview(b *testing.B) {
	for b.Loop() {
		reviewOf(b, "../../fixtures/projects/wardrobe/sound.plan")
	}
}
