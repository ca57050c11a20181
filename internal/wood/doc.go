// Package wood is the reference shelf: what is published about wood, boards, glues and
// screws, as tables with their sources on top, and the formulas that read them.
// It can be read and corrected by someone who knows timber and no compilers.
//
// To correct a figure, open its table in data/, a text file with commas between the cells.
// Change the number and, if you read it in the source, write seen in the status column; if the
// source differs from the one on top of the file, say so in the note. A blank cell means that
// nothing is known, and whatever needs it then keeps silent.
//
//	species.csv    every species, and its row in movement, shrinkage, strength, elastic
//	names.csv      what else the trade calls a species
//	movement.csv   growth and shrinkage for each 1 % of moisture content
//	shrinkage.csv  shrinkage from green to ovendry
//	strength.csv   specific gravity, stiffness, strength
//	elastic.csv    stiffness in three directions
//	emc.csv        moisture content by temperature and humidity (tests only)
//	sheets.csv     plywood, MDF and other sheets
//	bands.csv      how thick a plywood sheet may really be
//	glues.csv      open time, clamp time, temperature, exposure
//	screws.csv     holes for wood screws
//
// To add a species, write its rows in the tables and name them in a row of species.csv. The
// tests then hold the shelf: every row is reached, every name means one species, every figure
// has a status, and the tables agree with each other where they should.
//
// Lengths are Length. Everything else is a float64 in the unit that its name or comment says:
// percent, pascals, newtons, kg/m3, degrees Celsius.
package wood
