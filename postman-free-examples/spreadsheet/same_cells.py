"""Compares CSV files with the sheets that a spreadsheet program made of them: same_cells.py FOLDER FOLDER-OF-SHEETS."""

import csv
import pathlib
import sys
import xml.etree.ElementTree as tree

OFFICE = "{urn:oasis:names:tc:opendocument:xmlns:office:1.0}"
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
TEXT = "{urn:oasis:names:tc:opendocument:xmlns:text:1.0}"


def opened(path):
    """Rows of the first sheet: numbers as float, anything else as text."""
    for row in tree.parse(path).iter(TABLE + "table-row"):
        cells = []
        for cell in row.iter(TABLE + "table-cell"):
            if cell.get(OFFICE + "value-type") == "float":
                value = float(cell.get(OFFICE + "value"))
            elif cell.get(OFFICE + "value-type") == "boolean":
                value = cell.get(OFFICE + "boolean-value")
            else:
                value = "\n".join("".join(line.itertext()) for line in cell.iter(TEXT + "p"))
            cells += [value] * min(int(cell.get(TABLE + "number-columns-repeated", 1)), 100)
        yield cells


def meant(text):
    try:
        return float(text)
    except ValueError:
        return text


def main(answers, sheets):
    cells = wrong = 0
    for path in sorted(pathlib.Path(answers).glob("*.csv")):
        with open(path, newline="", encoding="utf-8") as file:
            asked = list(csv.reader(file))
        seen = list(opened(pathlib.Path(sheets, path.stem + ".fods")))
        for number, row in enumerate(asked):
            for column, text in enumerate(row):
                cells += 1
                found = seen[number][column] if number < len(seen) and column < len(seen[number]) else ""
                if meant(text) != found:
                    wrong += 1
                    print(f"{path.name} row {number + 1}, column {column + 1}: {text!r} became {found!r}")
        print(f"{path.name}: {len(asked)} rows")
    print(f"{cells} cells compared, {wrong} differ.")
    return 1 if wrong or cells == 0 else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
