package rules

// All is every rule by name, and every fault that is found while a plan is read.
var All = []*Rule{
	cannotUse,
	duplicateName,
	givenTwice,
	loop,
	missingReason,
	missingValue,
	notAllowable,
	syntax,
	tooLarge,
	unknownName,
	unknownRule,
	unknownWord,
	unusedAllow,
	wrongLimit,
	wrongValue,
}
