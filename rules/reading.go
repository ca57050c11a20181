package rules

// The faults that are found while a plan is read and worked out, by packages lang and plan.
// They stand in the list so that each has its page; nothing here finds them.

import (
	"plancheck/internal/diag"
	"plancheck/internal/plan"
	"plancheck/lang"
)

const ofTheLanguage = "The language itself."

var (
	syntax = &Rule{
		Name: lang.Syntax, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "a line cannot be read",
		Doc: `A statement is a line: a word of the trade, its values, sometimes a block in braces. Where a line cannot
be read, what it says is left out of everything that follows, and the rest of the plan is still checked.

Write what the finding says was expected there.`,
		Sources: ofTheLanguage,
		Bad: `let play = 27-1/2
`,
		Good: `let play = 27 1/2
`,
	}

	unknownWord = &Rule{
		Name: plan.UnknownWord, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "a word or a setting does not stand here",
		Doc: `Each word of the language stands in certain blocks and takes certain settings. A word that is misspelt, or
that stands in the wrong block, would otherwise be passed over, and a size with it.

Write the word that the finding proposes, or move the line to where it belongs. "plancheck words" prints what
each word takes.`,
		Sources: ofTheLanguage,
		Bad: `wood oak { species "white oak" ; swan quarter }
`,
		Good: `wood oak { species "white oak" ; sawn quarter }
`,
	}

	unknownName = &Rule{
		Name: plan.UnknownName, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "nothing bears this name",
		Doc: `A joint that names a rail which is not drawn, or a size that leans on a misspelt name, cannot be worked
out; what leans on it stays unchecked.

Write the name as it stands where the thing is declared, with a dot for what is inside: "carcass.middle".`,
		Sources: ofTheLanguage,
		Bad: `let play = 3/32
let room = 2 * paly
`,
		Good: `let play = 3/32
let room = 2 * play
`,
	}

	duplicateName = &Rule{
		Name: plan.DuplicateName, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "two things bear one name",
		Doc: `Whoever reads "leg" on the cutting list cannot know which of the two is meant, and the wrong board is cut.

Give one of them another name. Inside an assembly names are its own: two frames may each have a rail "head".`,
		Sources: ofTheLanguage,
		Bad: `let play = 3/32
let play = 1/16
`,
		Good: `let play      = 3/32
let fine-play = 1/16
`,
	}

	givenTwice = &Rule{
		Name: plan.GivenTwice, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "a setting is stated twice",
		Doc: `Of two statements of one size at most one is meant, and nobody can tell which.

Take one of them out. A default that "each" gives is another matter: what a thing says itself wins.`,
		Sources: ofTheLanguage,
		Bad: `wood oak { species "white oak" ; sawn flat ; sawn quarter }
`,
		Good: `wood oak { species "white oak" ; sawn quarter }
`,
	}

	wrongValue = &Rule{
		Name: plan.WrongValue, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "a value is of another kind, or in another unit, than is wanted",
		Doc: `A length where moisture is wanted, an angle added to a length, a name where a size belongs: such a value
has no sense in its place, and what leans on it stays unchecked.

Write a value of the kind that the finding names.`,
		Sources: ofTheLanguage,
		Bad: `wood oak { species "white oak" ; at 9mm }
`,
		Good: `wood oak { species "white oak" ; at 9% }
`,
	}

	missingValue = &Rule{
		Name: plan.MissingValue, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "a statement lacks what it cannot do without",
		Doc: `A wood without a species does not move and weighs nothing; a "let" without a value is no size.

Write what the finding asks for.`,
		Sources: ofTheLanguage,
		Bad: `wood oak { sawn quarter }
`,
		Good: `wood oak { species "white oak" ; sawn quarter }
`,
	}

	loop = &Rule{
		Name: plan.Loop, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "sizes wait for one another",
		Doc: `Where the width of the rail is taken from the door and that of the door from the rail, neither can be
worked out.

State one of the sizes in the loop outright. Each place that took part is noted.`,
		Sources: ofTheLanguage,
		Bad: `let rail = door - 4 1/2
let door = rail + 4 1/2
`,
		Good: `let rail = door - 4 1/2
let door = 18 13/16
`,
	}

	cannotUse = &Rule{
		Name: plan.CannotUse, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "a file cannot be taken in",
		Doc: `"use" takes in another plan by its name, relative to the file that says it, and never from outside the
folder that plancheck was asked to look at. A file that is not there, that cannot be read or that takes itself in
gives no names, and what leans on them stays unchecked.

Write the file's name as it is in the folder.`,
		Sources: ofTheLanguage,
		Bad: `use "no-such-shelf.plan"
`,
		Good: `let play = 3/32
`,
	}

	tooLarge = &Rule{
		Name: plan.TooLarge, Group: Reading, Severity: diag.Error, Always: true,
		Summary: "more than plancheck takes on",
		Doc: `A size above a kilometre, a million of one thing or a pattern that unfolds without end is a slip of the pen or
of a unit. plancheck refuses it rather than to work for hours.

Look at the unit and the number that the finding shows.`,
		Sources: ofTheLanguage,
		Bad: `wood oak { species "white oak" ; sawn quarter }
part plank { of oak ; size 2000m x 6 x 1 }
`,
		Good: `wood oak { species "white oak" ; sawn quarter }
part plank { of oak ; size 80 x 6 x 1 }
`,
	}
)
