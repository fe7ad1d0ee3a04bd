#!/usr/bin/env python3
"""Makes wires.xlsx, the workbook of a shop: type the wires in, and its cells show what the service answers.

    make-workbook.py [file]

Kept as a program because nobody can read a change of a workbook. Python 3.8 and its standard library are enough. Only
functions that stand in Excel 2013 and in LibreOffice 5 are used.
"""

import pathlib
import sys
import zipfile
from xml.sax.saxutils import escape

WIRES, PARTS, LINES, FINDINGS = 60, 20, 150, 40
TITLE, INPUT, HEAD, WRAPPED, SMALL = 1, 2, 3, 4, 5

EXAMPLE = [
    ("battery +", "fuse 1 in", "2.5 mm2", 0.3, "red"),
    ("fuse 1 out", "key 30", "2.5 mm2", 1.2, "brown"),
    ("key 15", "coil +", "1.5 mm2", 1, "white"),
    ("coil -", "points", "1.5 mm2", 0.5, "white/black"),
    ("fuse 1 out", "light switch 30", "1.5 mm2", 0.8, "brown"),
    ("light switch 56", "headlamps", "1.5 mm2", 2, "blue"),
    ("light switch 58", "tail lamps", "1 mm2", 4, "red"),
]


class Sheet:
    """One worksheet: cells by place, widths of columns, rows that stay at the top."""

    def __init__(self, name, widths, frozen):
        self.name, self.widths, self.frozen, self.rows = name, widths, frozen, {}

    def put(self, place, value=None, formula=None, style=0):
        column = place.rstrip("0123456789")
        number = int(place[len(column):])
        at = f'<c r="{place}" s="{style}"'
        if formula is not None:
            cell = f'{at} t="str"><f>{escape(formula)}</f><v></v></c>'
        elif isinstance(value, (int, float)):
            cell = f"{at}><v>{value}</v></c>"
        elif value:
            cell = f'{at} t="inlineStr"><is><t xml:space="preserve">{escape(value)}</t></is></c>'
        else:
            cell = f"{at}/>"
        self.rows.setdefault(number, []).append((len(column), column, cell))

    def xml(self):
        columns = "".join(f'<col min="{i}" max="{i}" width="{width}" customWidth="1"{" hidden=" + chr(34) + "1" + chr(34) if width == 0 else ""}/>'
                          for i, width in enumerate(self.widths, 1))
        rows = "".join(f'<row r="{number}">{"".join(cell for _, _, cell in sorted(cells))}</row>'
                       for number, cells in sorted(self.rows.items()))
        pane = (f'<pane ySplit="{self.frozen}" topLeftCell="A{self.frozen + 1}" activePane="bottomLeft" state="frozen"/>'
                if self.frozen else "")
        return ('<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
                '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
                '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>'
                f'<sheetViews><sheetView workbookViewId="0">{pane}</sheetView></sheetViews>'
                f"<cols>{columns}</cols><sheetData>{rows}</sheetData>"
                '<pageSetup orientation="landscape" paperSize="9" fitToWidth="1" fitToHeight="0"/></worksheet>')


def wires():
    sheet = Sheet("Wires", [26, 30, 14, 12, 16, 30], 8)
    sheet.put("A1", "Wires of a vehicle", style=TITLE)
    for row, (label, value) in enumerate((("Service", "http://127.0.0.1:8080"), ("Name", "Sandpiper 1500"),
                                          ("Voltage", "12 V"), ("Earth", "negative")), 2):
        sheet.put(f"A{row}", label, style=HEAD)
        sheet.put(f"B{row}", value, style=INPUT)
    sheet.put("A6", "One row a wire, in your own words. Only from and to are needed. The sheets Answer and Findings show what the "
                    "service says.", style=SMALL)
    for column, head in zip("ABCDEF", ("from", "to", "size", "length m", "colour", "note")):
        sheet.put(f"{column}8", head, style=HEAD)
    for i in range(WIRES):
        row = 9 + i
        for column, value in zip("ABCDE", EXAMPLE[i] if i < len(EXAMPLE) else [None] * 5):
            sheet.put(f"{column}{row}", value, style=INPUT)
        sheet.put(f"F{row}", style=INPUT)
    return sheet


def parts():
    sheet = Sheet("Parts", [26, 18, 18, 30], 3)
    sheet.put("A1", "What you know of the parts", style=TITLE)
    sheet.put("A2", "Leave it empty where you know nothing. The value is what stands on the part: 15 A, 12 V 45/40 W, 1.5 ohm.",
              style=SMALL)
    for column, head in zip("ABCD", ("part", "kind", "value", "works when")):
        sheet.put(f"{column}3", head, style=HEAD)
    for i in range(PARTS):
        row = 4 + i
        for column, value in zip("ABCD", ("fuse 1", "", "25 A", "") if i == 0 else [None] * 4):
            sheet.put(f"{column}{row}", value, style=INPUT)
    return sheet


def address():
    """The list as it goes into the address, put together row by row: ~ ends a cell and ; a row."""
    sheet = Sheet("Address", [110, 110], 1)
    sheet.put("A1", "The address that the workbook asks, and below it the list, put together row by row", style=TITLE)
    sheet.put("A2", formula='Wires!B2&"/v1/plans/review?format=markdown&errors=text&maxLength=30000&list="&_xlfn.ENCODEURL(A'
                            + str(4 + WIRES) + ")")
    sheet.put("B3", formula='"setting~value;name~"&Wires!B3&";voltage~"&Wires!B4&";earth~"&Wires!B5&";"'
                            f'&IF(COUNTA(Parts!A4:A{PARTS + 3})=0,"","part~kind~value~works when;")')
    for i in range(PARTS):
        row, part = 4 + i, 4 + i
        cells = '&"~"&'.join(f"Parts!{column}{part}" for column in "ABCD")
        sheet.put(f"B{row}", formula=f'B{row - 1}&IF(Parts!A{part}="","",{cells}&";")')
    sheet.put("A4", formula=f'B{PARTS + 3}&"from~to~size~length m~colour;"')
    for i in range(WIRES):
        row, wire = 5 + i, 9 + i
        cells = '&"~"&'.join(f"Wires!{column}{wire}" for column in "ABCDE")
        sheet.put(f"A{row}", formula=f'A{row - 1}&IF(Wires!A{wire}&Wires!B{wire}="","",{cells}&";")')
    return sheet


def answer():
    sheet = Sheet("Answer", [110, 0, 0, 0], 2)
    sheet.put("A1", "What the service answers", style=TITLE)
    sheet.put("A2", formula='IF(ISERROR(D2),"No answer. Is the service running at "&Wires!B2&"? Are links to be updated?",'
                            'IF(LEN(Address!A2)>2000,"The address has "&LEN(Address!A2)&" characters. Excel stops at 2048: send the file instead.",""))',
              style=SMALL)
    sheet.put("D2", formula="_xlfn.WEBSERVICE(Address!A2)")
    sheet.put("B3", 1)
    for i in range(LINES):
        row = 3 + i
        if i:
            sheet.put(f"B{row}", formula=f'IFERROR(FIND(CHAR(10),D$2,B{row - 1})+1,LEN(D$2)+2)')
        sheet.put(f"A{row}", formula=f'IFERROR(SUBSTITUTE(MID(D$2,B{row},B{row + 1}-B{row}-1),"\\",""),"")', style=WRAPPED)
        # Which finding of the answer this line is; 0 before the first.
        sheet.put(f"C{row}", formula=f'{"0" if i == 0 else f"C{row - 1}"}+IF(LEFT(A{row},4)="- **",1,0)')
    sheet.put(f"B{3 + LINES}", formula=f'IFERROR(FIND(CHAR(10),D$2,B{2 + LINES})+1,LEN(D$2)+2)')
    return sheet


def findings():
    sheet = Sheet("Findings", [8, 12, 110], 3)
    sheet.put("A1", "What to act on, worst first", style=TITLE)
    sheet.put("A2", formula="Answer!A5", style=SMALL)
    for column, head in zip("ABC", ("no", "severity", "finding and remedy")):
        sheet.put(f"{column}3", head, style=HEAD)
    for i in range(1, FINDINGS + 1):
        row, last = i + 3, LINES + 2
        line = f"INDEX(Answer!A$3:A${last},MATCH({i},Answer!C$3:C${last},0))"
        sheet.put(f"A{row}", formula=f'IF(MAX(Answer!C$3:C${last})<{i},"",{i})')
        sheet.put(f"B{row}", formula=f'IFERROR(MID({line},5,FIND("**:",{line})-5),"")')
        sheet.put(f"C{row}", formula=f'IFERROR(MID({line},FIND("**:",{line})+4,5000),"")', style=WRAPPED)
    return sheet


STYLES = ('<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
          '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
          '<fonts count="4"><font><sz val="11"/><name val="Calibri"/></font><font><b/><sz val="16"/><name val="Calibri"/></font>'
          '<font><b/><sz val="11"/><name val="Calibri"/></font><font><i/><sz val="10"/><name val="Calibri"/></font></fonts>'
          '<fills count="3"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill>'
          '<fill><patternFill patternType="solid"><fgColor rgb="FFF2F6E9"/></patternFill></fill></fills>'
          '<borders count="2"><border/><border><bottom style="thin"><color rgb="FFB5BDA6"/></bottom></border></borders>'
          '<cellStyleXfs count="1"><xf/></cellStyleXfs><cellXfs count="6"><xf/>'
          '<xf fontId="1" applyFont="1"/><xf fillId="2" borderId="1" applyFill="1" applyBorder="1"/><xf fontId="2" applyFont="1"/>'
          '<xf applyAlignment="1"><alignment wrapText="1" vertical="top"/></xf><xf fontId="3" applyFont="1"/></cellXfs></styleSheet>')


def write(file):
    sheets = [wires(), parts(), findings(), answer(), address()]
    types = "".join(f'<Override PartName="/xl/worksheets/sheet{i}.xml" ContentType="application/vnd.openxmlformats-officedocument'
                    '.spreadsheetml.worksheet+xml"/>' for i in range(1, len(sheets) + 1))
    links = "".join(f'<Relationship Id="rId{i}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet"'
                    f' Target="worksheets/sheet{i}.xml"/>' for i in range(1, len(sheets) + 1))
    names = "".join(f'<sheet name="{sheet.name}" sheetId="{i}" r:id="rId{i}"/>' for i, sheet in enumerate(sheets, 1))
    head = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>'
    files = {
        "[Content_Types].xml": head + '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        '<Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType='
        '"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/styles.xml" ContentType='
        f'"application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>{types}</Types>',
        "_rels/.rels": head + '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        '<Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument"'
        ' Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": head + '<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" '
        'xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships">'
        f'<sheets>{names}</sheets><calcPr fullCalcOnLoad="1"/></workbook>',
        "xl/_rels/workbook.xml.rels": head + '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
        f'{links}<Relationship Id="rId{len(sheets) + 1}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles"'
        ' Target="styles.xml"/></Relationships>',
        "xl/styles.xml": STYLES,
    }
    for i, sheet in enumerate(sheets, 1):
        files[f"xl/worksheets/sheet{i}.xml"] = sheet.xml()
    with zipfile.ZipFile(file, "w", zipfile.ZIP_DEFLATED) as book:
        for name, text in files.items():
            # A fixed date, so that the same workbook is the same bytes.
            book.writestr(zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0)), text, zipfile.ZIP_DEFLATED)


if __name__ == "__main__":
    write((sys.argv[1:] or [pathlib.Path(__file__).with_name("wires.xlsx")])[0])
