package main

// plancheck version: which build this is.

import (
	"fmt"
	"io"
	"runtime"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
)

// version is stamped on release builds by -ldflags "-X main.version=1.2.3".
var version string

func newVersion(s *streams) *cobra.Command {
	return &cobra.Command{
		Use:     "version",
		Short:   "say which plancheck this is",
		Example: "  plancheck version",
		Args:    nothing,
		RunE:    func(*cobra.Command, []string) error { return printVersion(s.out) },
	}
}

func printVersion(w io.Writer) error {
	_, err := fmt.Fprintf(w, "plancheck %s (%s, %s/%s)\n", versionName(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
	return err
}

// versionName is the stamped version, else what the build knows of itself.
func versionName() string {
	if version != "" {
		return version
	}
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "(unknown)"
}

// releaseVersion is the version of a release, which is a number; "" of other builds.
func releaseVersion() string {
	if v := strings.TrimPrefix(versionName(), "v"); v[0] >= '0' && v[0] <= '9' {
		return v
	}
	return ""
}
