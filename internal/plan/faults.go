package plan

// The names of the faults that this package reports. They are faults of words, names,
// units and loops: without them there is no piece to judge, so no `allow` silences them.
const (
	UnknownWord   = "unknown-word"   // a word or setting that does not stand here
	UnknownName   = "unknown-name"   // a name that nothing bears
	DuplicateName = "duplicate-name" // one name for two things
	GivenTwice    = "given-twice"    // a setting that is stated twice
	WrongValue    = "wrong-value"    // a value of another kind, or in another unit, than is wanted
	MissingValue  = "missing-value"  // a statement that lacks what it cannot do without
	Loop          = "loop"           // sizes that wait for one another
	CannotUse     = "cannot-use"     // a file that `use` cannot take in
	TooLarge      = "too-large"      // more than plancheck takes on
)
