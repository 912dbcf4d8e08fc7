"""Types into exported tables as a person would, with a writer of workbooks that is not ours."""
import datetime
import json
import sys
from pathlib import Path

import openpyxl

issued = Path(sys.argv[1])
here = Path(__file__).parent
tag = "P-301/pump-drive-end-loop"


def cell(sheet, row, head):
    heads = [each.value for each in sheet[1]]
    for line in sheet.iter_rows(min_row=2):
        if [each.value for each in line][: len(row)] == row:
            return line[heads.index(head)]
    raise SystemExit(f"no row {row}")


def edited(kind, typed):
    book = openpyxl.load_workbook(issued / f"{kind}.xlsx")
    sheet = book.worksheets[0]
    told = []
    for row, head, value in typed:
        place = cell(sheet, row, head)
        told.append({"cell": place.coordinate, "head": head, "before": place.value, "typed": value})
        place.value = value
    book.save(here / f"{kind}.xlsx")
    return told


tables = {
    "instrument-list": edited(
        "instrument-list",
        [([tag], "Surface", "71.5 °C"), ([tag], "Location", "pump, drive end; \u201clower\u201d half: 45° down"), ([tag], "Mount", "epoxy-pad")],
    ),
    "cable-schedule": edited("cable-schedule", [([f"{tag}/C1"], "Length, m", 91.5), ([f"{tag}/C1"], "Apart by", "300 mm")]),
    "alarm-register": edited("alarm-register", [([tag, "baseline"], "Set at", 2.1), ([tag, "trip"], "Delay, s", 4)]),
}

book = openpyxl.load_workbook(issued / "cable-schedule.xlsx")
sheet = book.worksheets[0]
cell(sheet, [f"{tag}/C1"], "Length, m").value = "=45*2"
date = cell(sheet, [f"{tag}/C1"], "Apart by")
date.value = datetime.date(2026, 4, 20)
date.number_format = "d-mmm"
along = cell(sheet, [f"{tag}/C1"], "Screen earthed at")
sheet.merge_cells(start_row=along.row, end_row=along.row, start_column=along.column, end_column=along.column + 1)
book.save(here / "spoiled.xlsx")

(here / "edited.json").write_text(
    json.dumps({"writer": f"openpyxl {openpyxl.__version__}", "tables": tables}, ensure_ascii=False, indent=2) + "\n"
)
