package job

import (
	"drawerwright/geom/joinery"
	"drawerwright/geom/sheet"
)

var stockKeys = []key{
	{name: "thickness", form: formReadings, required: true, noun: "stock", min: minThickness, max: maxThickness,
		doc:     "The thickness, or a list of caliper readings from several places",
		example: "[12.21, 12.16, 12.24]"},
	{name: "readings-per-sheet", form: formCount, min: 1, max: maxReadings,
		doc: "The readings of thickness are sheet by sheet, so many of each; a box then gets boards of sheets that " +
			"measure alike, sorted into as few lots as will do, each cut at one setting",
		without: "it is not known which reading is of which sheet",
		example: "2", with: "thickness: [12.05, 12.07, 12.31, 12.29]\nsheet: 1525 x 1525"},
	{name: "sheet", form: formSize, sides: []string{"length", "width"}, min: minSize, max: maxSize,
		doc: "The size of a sheet as bought", without: "parts are not checked against it",
		example: "1525 x 1525"},
	{name: "grain", form: formWord, words: []string{string(joinery.GrainLength), string(grainWidth), string(joinery.GrainNone)}, fallback: string(joinery.GrainNone),
		doc:     "length: the grain runs along the first number of the sheet; width: along the second; none: parts may lie either way",
		example: "length", with: "sheet: 1525 x 1525", why: "parts may then be turned to save board; where grain shows, say how it runs"},
	{name: "price", form: formPrice, min: 0, max: maxPrice, doc: "The price of one sheet, in any currency", without: "no costs are added up",
		example: "58", with: "sheet: 1525 x 1525"},
	{name: "count", form: formCount, min: 1, max: maxSheetCount, doc: "How many sheets of that size there are", without: "as many as it takes",
		example: "4", with: "sheet: 1525 x 1525"},
	{name: "batch", form: formTitle, doc: "The batch that they were made in, for parts that match", without: "the batch has no name",
		example: "March", with: "sheet: 1525 x 1525"},
	{name: "match", form: formWord, words: []string{MatchBatch, MatchSequence},
		doc: "batch: the drawer fronts of a cabinet come from sheets of one batch; sequence: they are also cut side by side, in the order in which they hang", without: "drawer fronts are laid out as all other parts",
		example: "sequence", with: "sheet: 1525 x 1525"},
	{name: "other-sheets", form: formNamed, keys: sheetSizeKeys, noun: "size", most: maxSheetSizes, doc: "Other sizes of its sheets by name, or other batches", without: "it comes only in that size",
		example: "{half: {sheet: 1525 x 760, price: 34}}", with: "sheet: 1525 x 1525"},
	{name: "min-sheet", form: formSize, sides: []string{"length", "width"}, min: minSize, max: maxSize, doc: "The smallest length and width that its sheets measure, for pins and rims on a router", without: mm(sheet.UsualShort) + " less than the sheet",
		example: "1523 x 1523", with: "sheet: 1525 x 1525"},
	{name: "keep-out", form: formList, keys: keepOutKeys, noun: "area", most: maxKeepOuts, doc: "Areas of its sheets that a router keeps out of: clamps and stops, with the room that the spindle's nut and hood need", without: "there is none",
		example: "[{at: 0 x 700, size: 40 x 80}]", with: "sheet: 1525 x 1525"},
	{name: "material", form: formWord, words: materials(),
		doc: "The kind of sheet or of solid wood, which says how heavy and how stiff it is; averages of many trees and mills", without: "neither is known",
		example: "birch-plywood"},
	{name: "cut", form: formWord, words: []string{flatsawn, quartersawn},
		doc: "How boards of solid wood were sawn: quartersawn ones move less across the grain", without: "flatsawn",
		example: "quartersawn", with: "material: cherry\ngrain: length"},
	{name: "density", form: formMeasure, measures: densities, min: minDensity, max: maxDensity, doc: "How heavy it is, weighed", without: "as the material",
		example: "680 kg/m3"},
	{name: "stiffness", form: formMeasure, measures: stiffnesses, min: minStiffness, max: maxStiffness,
		doc: "Its modulus of elasticity in bending along the grain", without: "as the material",
		example: "9000 N/mm2"},
	{name: "stiffness-across", form: formMeasure, measures: stiffnesses, min: minStiffness, max: maxStiffness,
		doc: "The same across the grain", without: "as the material; with stiffness as along the grain, of solid wood a twentieth of it",
		example: "6000 N/mm2", with: "stiffness: 9000 N/mm2"},
	{name: "movement", form: formMeasure, measures: humidities, min: minMovement, max: maxMovement,
		doc: "By how much of its width solid wood moves for one percent of its moisture; with density and stiffness " +
			"it describes a wood that is not listed",
		without: "as the material, by its cut",
		example: "0.3 %", with: "grain: length"},
	{name: "tolerance", form: formWord, words: toleranceWords(),
		doc:     "With a single reading, which is then taken for the nominal thickness: the standard whose tolerance says between which thicknesses sheets are",
		without: "every sheet is as thick as the readings",
		example: "en315-sanded", with: "thickness: 12"},
	{name: "kerf", form: formLength, min: 0, max: maxKerf, doc: "What a laser takes away along its line in this stock, or the diameter of the bit that cuts plates of it; measure a test cut",
		without: "templates are drawn as they should come out",
		example: "0.18"},
	{name: "boards", form: formSection, keys: boardKeys, without: "it comes in sheets, or boards as wide as its parts",
		doc:     "The rough boards of solid wood that its parts are made of: rough sizes, glue-ups and how much wood is bought",
		example: "{width: 180}"},
	{name: "edge-banding", form: formSection, keys: bandingKeys, without: "edges stay bare", doc: "What the visible edges of parts of this stock are banded with",
		example: "{thickness: 0.5, price: 0.40}"},
}

var boardKeys = []key{
	{name: "width", form: formLength, required: true, min: minBoard, max: maxSize,
		doc:     "How wide boards are as they are bought; wider parts are glued up of several",
		example: "180"},
	{name: "rough", form: formLength, min: minThickness, max: maxRough,
		doc:     "How thick they are before they are planed to the measured thickness; with units: in also as 5/4",
		without: "the thinnest of those that are sold that leaves enough to plane",
		example: "27", with: "width: 180"},
	{name: "waste", form: formMeasure, measures: humidities, min: 0, max: maxWaste, fallback: usualWaste + " %",
		doc:     "How much more is bought than rough parts take, for knots, checks and ends",
		example: "30 %", with: "width: 180", why: "a usual allowance; common practice, no source"},
	{name: "price", form: formPrice, min: 0, max: maxPrice,
		doc:     "The price of a cubic meter of it, or of a board foot with units: in, in any currency",
		without: "it costs nothing", example: "1900", with: "width: 180"},
}

var bandingKeys = []key{
	{name: "thickness", form: formLength, required: true, min: minBanding, max: maxBanding, doc: "The thickness of the banding",
		example: "0.5"},
	{name: "price", form: formPrice, min: 0, max: maxPrice, doc: "The price of a meter of it, or of a foot with units: in, in any currency", without: "it costs nothing",
		example: "0.40", with: "thickness: 0.5"},
}

var climateKeys = []key{
	{name: "now", form: formMeasure, required: true, measures: humidities, min: minHumidity, max: maxHumidity, doc: "The relative humidity of the air in which the wood lies now",
		example: "45 %", with: "driest: 30 %\ndampest: 60 %"},
	{name: "driest", form: formMeasure, required: true, measures: humidities, min: minHumidity, max: maxHumidity, doc: "The lowest relative humidity where the drawers will stand, over weeks",
		example: "30 %", with: "now: 45 %\ndampest: 60 %"},
	{name: "dampest", form: formMeasure, required: true, measures: humidities, min: minHumidity, max: maxHumidity, doc: "The highest relative humidity where the drawers will stand, over weeks",
		example: "60 %", with: "now: 45 %\ndriest: 30 %"},
	{name: "temperature", form: formMeasure, measures: temperatures, min: minTemperature, max: maxTemperature, fallback: "20 C", doc: "The temperature of that air",
		example: "18 C", with: "now: 45 %\ndriest: 30 %\ndampest: 60 %", why: "a heated room; wood heeds the temperature little"},
}
