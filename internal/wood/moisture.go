package wood

// greenAt is the moisture content in percent at which most wood is taken to start
// shrinking (Wood Handbook, ch. 13).
const greenAt = 30
