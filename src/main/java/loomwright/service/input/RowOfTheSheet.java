package loomwright.service.input;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;

/**
 * A reading may be a row of the sheet of readings, or a reading that a diagnosis advised, as it is. What these say besides where
 * and when to measure is passed over.
 */
@JsonIgnoreProperties({
    "number",
    "purpose",
    "situation",
    "circuit",
    "quantity",
    "redLabel",
    "blackLabel",
    "meter",
    "shows",
    "unit",
    "lowest",
    "nominal",
    "highest",
    "tells",
    "priority",
    "redPlace",
    "blackPlace",
    "instruction",
    "gainBits",
    "cost",
    "outcomes"
})
interface RowOfTheSheet {}
