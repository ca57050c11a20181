package main

// The review in a real browser: it fits a desk and a phone, an established engine finds nothing
// that keeps anyone from reading it, a validator finds it to be HTML, and it prints. Skipped, with a word,
// where the browser, npm or its registry is not there.

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// audit opens a page at two widths, looks for what does not fit, runs the accessibility engine, and
// prints it to PDF.
const audit = `
const { chromium } = require('playwright-core');
const engine = require('fs').readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
(async () => {
  const [browserPath, page, pdf] = process.argv.slice(2);
  const browser = await chromium.launch({ executablePath: browserPath, args: ['--no-sandbox', '--disable-gpu', '--disable-quic',
    '--disable-background-networking', '--disable-component-update', '--disable-sync'] });
  const out = { wide: [], found: [], requests: [] };
  for (const width of [1280, 390]) {
    const context = await browser.newContext({ viewport: { width, height: 900 }, bypassCSP: true });
    const tab = await context.newPage();
    tab.on('request', r => { if (r.url() !== page) out.requests.push(r.url()); });
    await tab.goto(page);
    const spare = await tab.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    if (spare > 0) out.wide.push(width + ': ' + spare);
    await tab.evaluate(engine);
    const result = await tab.evaluate(() => axe.run(document));
    for (const v of result.violations) out.found.push(width + ': ' + v.id + ': ' + v.help + ': ' + v.nodes.slice(0, 3).map(n => n.html.slice(0, 200)).join(' | '));
    if (width === 1280) await tab.pdf({ path: pdf, format: 'A4', preferCSSPageSize: false });
    await context.close();
  }
  await browser.close();
  console.log(JSON.stringify(out));
})().catch(e => { console.error(e); process.exit(1); });
`

func TestReviewInABrowser(t *testing.T) {
	if testing.Short() {
		t.Skip("starts a browser")
	}
	browser := look(t, "chromium", "chromium-browser", "google-chrome")
	node, npm := look(t, "node"), look(t, "npm")
	folder := t.TempDir()
	install := exec.Command(npm, "install", "--prefix", folder, "--no-audit", "--no-fund", "--ignore-scripts", "--silent",
		"playwright-core@1.64", "axe-core@4.14", "vnu-jar@24")
	if out, err := install.CombinedOutput(); err != nil {
		t.Skipf("the packages that look at a page cannot be had here: %v %.500s", err, out)
	}
	script := filepath.Join(folder, "audit.js")
	if err := os.WriteFile(script, []byte(audit), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, plan := range []string{"cabinet/slips", "wardrobe/sound", "desk/sound", "bed/slips"} {
		t.Run(plan, func(t *testing.T) {
			page := filepath.Join(folder, "review.html")
			if code, _, said := command(t, "", "review", "../../fixtures/projects/"+plan+".plan", "-o", page); code == failed {
				t.Fatal(said)
			}
			pdf := filepath.Join(folder, "review.pdf")
			run := exec.Command(node, script, browser, "file://"+page, pdf)
			var errs bytes.Buffer
			run.Stderr = &errs
			out, err := run.Output()
			if err != nil {
				t.Fatalf("%v\n%s", err, errs.String())
			}
			var seen struct{ Wide, Found, Requests []string }
			if err := json.Unmarshal(out, &seen); err != nil {
				t.Fatal(err)
			}
			for what, list := range map[string][]string{"wider than the screen": seen.Wide, "found": seen.Found, "asked for": seen.Requests} {
				if len(list) > 0 {
					t.Errorf("%s:\n%s", what, strings.Join(list, "\n"))
				}
			}
			if printed, err := os.ReadFile(pdf); err != nil || !bytes.HasPrefix(printed, []byte("%PDF")) {
				t.Errorf("it does not print: %v", err)
			}
			isHTML(t, folder, page)
		})
	}
}

// look finds a program under one of its names, or skips the test.
func look(t *testing.T, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	t.Skipf("there is no %s here", names[0])
	return ""
}

// isHTML asks the validator of the HTML standard's makers, where Java is there.
func isHTML(t *testing.T, folder, page string) {
	t.Helper()
	java, err := exec.LookPath("java")
	if err != nil {
		t.Log("not validated: there is no java here")
		return
	}
	jar := filepath.Join(folder, "node_modules/vnu-jar/build/dist/vnu.jar")
	// It does not know this property of SVG 2 yet.
	if out, err := exec.Command(java, "-jar", jar, "--errors-only", "--filterpattern", ".*paint-order.*", page).CombinedOutput(); err != nil {
		t.Errorf("%v\n%.2000s", err, out)
	}
}
