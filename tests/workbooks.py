"""Workbooks as spreadsheet programs write them, put together from ECMA-376 with nothing but a zip packet and text."""

from __future__ import annotations

import io
import zipfile
from dataclasses import dataclass
from xml.sax.saxutils import escape

MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
LINK = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
OFFICE = "http://schemas.openxmlformats.org/package/2006"
KIND = "application/vnd.openxmlformats-officedocument.spreadsheetml."
XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
PLAIN, DAY, NOUGHTS, LETTERED = range(4)  # the formats below: general, a date, 0000, "Q-"0000
STYLES = f"""<styleSheet xmlns="{MAIN}"><numFmts count="2"><numFmt numFmtId="164" formatCode="0000"/>
<numFmt numFmtId="165" formatCode="&quot;Q-&quot;0000"/></numFmts>
<fonts count="1"><font><sz val="11"/><name val="Calibri"/></font></fonts>
<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>
<borders count="1"><border/></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>
</cellStyleXfs><cellXfs count="4"><xf numFmtId="0" xfId="0"/><xf numFmtId="14" xfId="0" applyNumberFormat="1"/>
<xf numFmtId="164" xfId="0" applyNumberFormat="1"/><xf numFmtId="165" xfId="0" applyNumberFormat="1"/></cellXfs>
<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>"""


@dataclass(frozen=True)
class Value:
    """A number in a format, or the result of a formula; `shown` None: the formula was never worked."""

    shown: float | str | None
    style: int = PLAIN
    formula: str = ""


Cells = list[list["str | float | Value | None"]]


def letter(column: int) -> str:
    return (chr(64 + (column - 1) // 26) if column > 26 else "") + chr(65 + (column - 1) % 26)


def cell(at: str, value: str | float | Value, words: list[str]) -> str:
    if isinstance(value, str):
        words.append(value)
        return f'<c r="{at}" t="s"><v>{len(words) - 1}</v></c>'
    if not isinstance(value, Value):
        return f'<c r="{at}"><v>{value}</v></c>'
    formula = f"<f>{escape(value.formula)}</f>" if value.formula else ""
    kind = ' t="str"' if isinstance(value.shown, str) else ""
    shown = "" if value.shown is None else f"<v>{escape(str(value.shown))}</v>"
    return f'<c r="{at}" s="{value.style}"{kind}>{formula}{shown}</c>'


def page(rows: Cells, words: list[str], first: int = 1) -> str:
    lines = []
    for number, row in enumerate(rows, first):
        held = [cell(f"{letter(n)}{number}", value, words) for n, value in enumerate(row, 1) if value is not None]
        if held:  # a spreadsheet program leaves out what is empty
            lines.append(f'<row r="{number}">{"".join(held)}</row>')
    return f'{XML}<worksheet xmlns="{MAIN}"><sheetData>{"".join(lines)}</sheetData></worksheet>'


def parts(*sheets: Cells, hidden: int = 0) -> dict[str, str]:
    """The parts of a workbook by their names; the first `hidden` sheets are hidden."""
    words: list[str] = []
    pages = [page(rows, words) for rows in sheets]
    number = range(1, len(pages) + 1)
    strings = "".join(f'<si><t xml:space="preserve">{escape(word)}</t></si>' for word in words)
    state = ['state="hidden" ' if n <= hidden else "" for n in number]
    listed = "".join(f'<sheet name="Sheet{n}" sheetId="{n}" {state[n - 1]}r:id="rId{n}"/>' for n in number)
    links = "".join(
        f'<Relationship Id="rId{n}" Type="{LINK}/worksheet" Target="worksheets/sheet{n}.xml"/>' for n in number
    )
    types = "".join(
        f'<Override PartName="/xl/worksheets/sheet{n}.xml" ContentType="{KIND}worksheet+xml"/>' for n in number
    )
    return {
        "[Content_Types].xml": f'{XML}<Types xmlns="{OFFICE}/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        f'<Default Extension="xml" ContentType="application/xml"/>{types}'
        f'<Override PartName="/xl/workbook.xml" ContentType="{KIND}sheet.main+xml"/>'
        f'<Override PartName="/xl/styles.xml" ContentType="{KIND}styles+xml"/>'
        f'<Override PartName="/xl/sharedStrings.xml" ContentType="{KIND}sharedStrings+xml"/></Types>',
        "_rels/.rels": f'{XML}<Relationships xmlns="{OFFICE}/relationships">'
        f'<Relationship Id="rId1" Type="{LINK}/officeDocument" Target="xl/workbook.xml"/></Relationships>',
        "xl/workbook.xml": f'{XML}<workbook xmlns="{MAIN}" xmlns:r="{LINK}"><sheets>{listed}</sheets></workbook>',
        "xl/_rels/workbook.xml.rels": f'{XML}<Relationships xmlns="{OFFICE}/relationships">{links}'
        f'<Relationship Id="rId98" Type="{LINK}/styles" Target="styles.xml"/>'
        f'<Relationship Id="rId99" Type="{LINK}/sharedStrings" Target="sharedStrings.xml"/></Relationships>',
        "xl/styles.xml": XML + STYLES,
        "xl/sharedStrings.xml": f'{XML}<sst xmlns="{MAIN}">{strings}</sst>',
        **{f"xl/worksheets/sheet{n}.xml": text for n, text in zip(number, pages, strict=True)},
    }


def packed(files: dict[str, str]) -> bytes:
    whole = io.BytesIO()
    with zipfile.ZipFile(whole, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, text in files.items():
            archive.writestr(name, text)
    return whole.getvalue()
