#!/usr/bin/env python3
"""Has a spreadsheet program calculate the example sheet and the workbook of a shop afresh against a running service, and
compares every cell that asks the service with what the service answers to the same address asked directly.

    recalculate.py [address of the service] [file for the workbook as PDF]

Needs LibreOffice Calc with its Python bridge (Debian: libreoffice-calc, python3-uno). It works on a copy with a profile
of its own, in which documents may fetch addresses; settings of the user are neither read nor changed.
"""

import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time
import urllib.parse
import urllib.request

import uno
from com.sun.star.beans import PropertyValue
from com.sun.star.connection import NoConnectException
from com.sun.star.sheet.FormulaResult import STRING as TEXT
from com.sun.star.document.UpdateDocMode import FULL_UPDATE

HERE = pathlib.Path(__file__).parent
SERVICE = (sys.argv[1:] or [os.environ.get("LOOMWRIGHT", "http://127.0.0.1:8080")])[0]
SHEETS = {"Figures": ("F", "G", 4), "Wires": ("F", "G", 2)}  # column of the address, of the answer, first row

# Trust for one folder alone: what lies there may fetch addresses.
SETTINGS = """<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry">
 <item oor:path="/org.openoffice.Office.Common/Security/Scripting">
  <prop oor:name="SecureURL" oor:op="fuse"><value><it>{folder}</it></value></prop>
 </item>
</oor:items>
"""


def property_value(name, value):
    return PropertyValue(Name=name, Value=value)


def connect(pipe):
    resolver = uno.getComponentContext().ServiceManager.createInstance("com.sun.star.bridge.UnoUrlResolver")
    for _ in range(120):
        try:
            return resolver.resolve(f"uno:pipe,name={pipe};urp;StarOffice.ComponentContext")
        except NoConnectException:
            time.sleep(0.5)
    sys.exit("The spreadsheet program did not start within a minute.")


def ask(address):
    with urllib.request.urlopen(address, timeout=30) as answer:
        return answer.read().decode()


def as_cell(text):
    """A number as the sheet's VALUE() sees it; any other text stays a text."""
    try:
        return float(text)
    except ValueError:
        return text


def agree(cell, answer):
    if isinstance(answer, float) and isinstance(cell, float):
        return abs(cell - answer) <= 1e-9 * max(1, abs(answer))
    return cell == answer


def compare(document):
    """Prints a line for each cell that asks the service; returns the numbers of cells and of those that differ."""
    asked = wrong = 0
    for name, (address_column, answer_column, row) in SHEETS.items():
        sheet = document.Sheets.getByName(name)
        while address := sheet.getCellRangeByName(f"{address_column}{row}").String:
            answer = as_cell(ask(address))
            place = sheet.getCellRangeByName(f"{answer_column}{row}")
            cell = as_cell(place.String) if place.FormulaResultType2 == TEXT else place.Value
            same = agree(cell, answer)
            label = sheet.getCellRangeByName(f"A{row}").String
            print(f"{'same  ' if same else 'DIFFER'} {name}.{answer_column}{row}  {cell}  {label}")
            if not same:
                print(f"       the service answers {answer!r} to {address}")
            asked, wrong, row = asked + 1, wrong + (not same), row + 1
    return asked, wrong


def compare_findings(book):
    """The same for the workbook: each row of its findings against the findings of the same list in JSON."""
    address = urllib.parse.urlsplit(book.Sheets.getByName("Address").getCellRangeByName("A2").String)
    query = dict(urllib.parse.parse_qsl(address.query))
    answer = json.loads(ask(f"{SERVICE}/v1/plans/review?{urllib.parse.urlencode({'list': query['list']})}"))
    sheet = book.Sheets.getByName("Findings")
    expected = [(one["severity"], one["text"]) for one in answer["result"]["findings"]]
    row, wrong = 4, 0
    while sheet.getCellRangeByName(f"A{row}").String:
        severity, text = (sheet.getCellRangeByName(f"{column}{row}").String for column in "BC")
        known = expected[row - 4] if row - 4 < len(expected) else ("", "no such finding")
        same = severity == known[0] and text.startswith(known[1])
        print(f"{'same  ' if same else 'DIFFER'} Findings row {row}  {severity}: {text[:70]}")
        wrong, row = wrong + (not same), row + 1
    missing = len(expected) - (row - 4)
    lines = book.Sheets.getByName("Answer").getCellRangeByName("A3").String
    print(f"Answer begins: {lines}")
    return row - 4, wrong + abs(missing) + (lines != f"# {answer['result']['plan']}")


def main():
    with tempfile.TemporaryDirectory() as folder:
        profile = pathlib.Path(folder, "profile", "user")
        profile.mkdir(parents=True)
        (profile / "registrymodifications.xcu").write_text(SETTINGS.format(folder=pathlib.Path(folder).as_uri()))
        sheet = pathlib.Path(shutil.copy(HERE / "loomwright.fods", folder))
        workbook = pathlib.Path(shutil.copy(HERE / "wires.xlsx", folder))
        pipe = f"loomwright{os.getpid()}"
        program = subprocess.Popen(
            ["soffice", "--headless", "--norestore", "--nologo", f"--accept=pipe,name={pipe};urp;",
             f"-env:UserInstallation=file://{folder}/profile"],
            stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        try:
            context = connect(pipe)
            desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
            document = desktop.loadComponentFromURL(
                sheet.as_uri(), "_blank", 0,
                (property_value("Hidden", True), property_value("UpdateDocMode", FULL_UPDATE)))
            # The address of the service stands in one cell; setting it calculates everything that asks it.
            document.Sheets.getByName("Figures").getCellRangeByName("B1").String = SERVICE
            document.calculateAll()
            asked, wrong = compare(document)
            document.close(True)
            book = desktop.loadComponentFromURL(
                workbook.as_uri(), "_blank", 0,
                (property_value("Hidden", True), property_value("UpdateDocMode", FULL_UPDATE)))
            book.Sheets.getByName("Wires").getCellRangeByName("B2").String = SERVICE
            book.calculateAll()
            findings, different = compare_findings(book)
            if len(sys.argv) > 2:
                book.storeToURL(pathlib.Path(sys.argv[2]).absolute().as_uri(), (property_value("FilterName", "calc_pdf_Export"),))
            book.close(True)
            desktop.terminate()
            program.wait(30)
        finally:
            program.kill()
    print(f"{asked} cells and {findings} rows of findings asked {SERVICE}, {wrong + different} differ.")
    return 1 if wrong or different or asked == 0 or findings == 0 else 0


if __name__ == "__main__":
    sys.exit(main())
