"""Reads an issued set with programs that are not ours, and holds it against the design and the plant file.

PDF: pdfinfo, pdftotext and pdffonts (poppler); XLSX: zipfile and xml of the Python library. Prints a JSON of what was
compared and of every difference found: read_issue.py REVISION_FOLDER DESIGN_JSON PLANT_YAML
"""
import json
import re
import subprocess
import sys
import zipfile
from pathlib import Path
from xml.etree import ElementTree

folder, design_path, plant_path = (Path(each) for each in sys.argv[1:4])
design = json.loads(design_path.read_text())
contents = json.loads((folder / 'contents.json').read_text())
points = [point for machine in design['machines'] for point in machine['points']]
faults = []
counts = {'pages': 0, 'documents': 0, 'tags': 0, 'cells': 0, 'texts': 0, 'fonts': 0}


def fault(*words):
    faults.append(' '.join(str(word) for word in words))


def told_by(program, *parameters):
    return subprocess.run([program, *parameters], check=True, capture_output=True).stdout.decode('utf-8')


def closed(text):
    return re.sub(r'[\s\u00a0\u200b\u2007\u2008]+', '', text)


# PDF: pages, foot of every page, fonts, marks of PDF/A.
texts = {}
for path in sorted(folder.glob('*.pdf')):
    counts['documents'] += 1
    pages = int(re.search(r'Pages:\s+(\d+)', told_by('pdfinfo', str(path))).group(1))
    listed = next(each for each in contents['files'] if each['path'] == path.name)
    if listed.get('pages') != pages:
        fault(path.name, 'has', pages, 'pages, contents.json says', listed.get('pages'))
    read = told_by('pdftotext', '-layout', str(path), '-').split('\f')[:-1]
    if len(read) != pages:
        fault(path.name, 'gives text of', len(read), 'pages of', pages)
    for at, page in enumerate(read):
        flat = closed(page)
        for wanted in (f'page{at + 1}of{pages}', closed(f"revision {contents['revision']}"), contents['contentHash'][:16]):
            if wanted not in flat:
                fault(path.name, 'page', at + 1, 'lacks', wanted)
    counts['pages'] += pages
    for line in told_by('pdffonts', str(path)).splitlines()[2:]:
        counts['fonts'] += 1
        name, embedded = line.split()[0], re.search(r'\s(yes|no)\s+(yes|no)\s+(yes|no)\s+\d+\s+\d+\s*$', line)
        if embedded is None or embedded.group(1) != 'yes' or not re.match(r'[A-Z]{6}\+Inter', name):
            fault(path.name, 'font not embedded or not ours:', line)
    raw = path.read_bytes()
    if b'pdfaid:part>2<' not in raw or b'pdfaid:conformance>B<' not in raw:
        fault(path.name, 'is not marked PDF/A-2b')
    kind = re.sub(r'(-\d+-of-\d+)+$', '', path.stem)
    texts[kind] = texts.get(kind, '') + closed(' '.join(read))

# Every tag on the sheets it must be on.
everywhere = ['instrument-list', 'machine-and-point-sheets', 'chain-calculations', 'loop-diagrams', 'commissioning-tests',
              'terminal-plan', 'cable-schedule', 'requirement-sheets', 'mounting-instructions']
for point in points:
    wanted = everywhere + (['alarm-register'] if 'alarms' in point else []) + (['hazardous-area-loops'] if 'area' in point else [])
    for kind in wanted:
        counts['tags'] += 1
        if closed(point['point']) not in texts.get(kind, ''):
            fault(point['point'], 'is missing in', kind)

# XLSX, with a reader of its own.
ns = {'m': 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'}


def column_of(reference):
    number = 0
    for letter in re.match(r'[A-Z]+', reference).group(0):
        number = number * 26 + ord(letter) - 64
    return number - 1


def rows_of(path):
    """Rows of the first tab, each a mapping from its head; the hidden column of what was exported is left out."""
    with zipfile.ZipFile(path) as book:
        shared = []
        if 'xl/sharedStrings.xml' in book.namelist():
            for entry in ElementTree.fromstring(book.read('xl/sharedStrings.xml')).findall('m:si', ns):
                shared.append(''.join(each.text or '' for each in entry.iter(f"{{{ns['m']}}}t")))
        sheet = ElementTree.fromstring(book.read('xl/worksheets/sheet1.xml'))
        table = []
        for row in sheet.iter(f"{{{ns['m']}}}row"):
            cells = {}
            for cell in row.findall('m:c', ns):
                value, kind = cell.find('m:v', ns), cell.get('t')
                if kind == 's':
                    cells[column_of(cell.get('r'))] = shared[int(value.text)]
                elif kind == 'inlineStr':
                    cells[column_of(cell.get('r'))] = ''.join(each.text or '' for each in cell.iter(f"{{{ns['m']}}}t"))
                elif value is not None:
                    cells[column_of(cell.get('r'))] = float(value.text) if kind in (None, 'n') else value.text
            table.append(cells)
        head = table[0]
        return [{head[at]: cells.get(at) for at in head} for cells in table[1:]]


def agree(where, found, wanted):
    counts['cells'] += 1
    same = abs(found - wanted) <= 1e-9 * max(1, abs(wanted)) if isinstance(wanted, float) and isinstance(found, float) else found == wanted
    if not same:
        fault(where, 'says', found, 'and the design', wanted)


def in_text(kind, where, wanted):
    counts['texts'] += 1
    for word in re.split(r'[\s/-]+', str(wanted)):
        if len(word) < 20 and closed(word) not in texts[kind]:
            fault(where, 'is not in the text of', kind, ':', word)


scale = {'m/s': 1000, 'm/s²': 1 / 9.80665, 'm': 1e6}

instruments = rows_of(folder / 'instrument-list.xlsx')
if [row['Tag'] for row in instruments] != [point['point'] for point in points]:
    fault('the instrument list does not have the points of the design in their order')
for row, point in zip(instruments, points):
    chain = point['appraisal']['chain']
    for head, wanted in (('Transducer', chain['transducer']), ('Mount', chain['mount']), ('Input', chain['input']),
                         ('Location', point['location']['value'] if isinstance(point['location'], dict) else point['location'])):
        agree(f"{point['point']} {head}", row[head], wanted)
        in_text('instrument-list', point['point'], wanted)

alarms = rows_of(folder / 'alarm-register.xlsx')
registered = [(point, line) for point in points for line in point.get('alarms', {}).get('register', [])]
if len(alarms) != len(registered):
    fault('alarm register:', len(alarms), 'rows against', len(registered), 'in the design')
for row, (point, line) in zip(alarms, registered):
    where = f"{point['point']} {line['name']}"
    agree(where, row['Tag'], point['point'])
    agree(where, row['Level'], line['name'])
    agree(where, row['Because'], line['because'])
    in_text('alarm-register', where, line['because'])
    if 'value' in line.get('level', {}):
        agree(where, row['Set at'], float(line['level']['value'] * scale[line['level']['unit']]))
    if 'current' in line and 'value' in line['current']:
        agree(where, row['Current, mA'], line['current']['value'] * 1000)
        in_text('alarm-register', where, line['current']['shown'].split(' ')[0])
    if isinstance(line.get('counts'), (int, float)):
        agree(where, row['Counts'], float(line['counts']))
    if 'delay' in line and 'value' in line['delay']:
        agree(where, row['Delay, s'], float(line['delay']['value']))

# Cables: their lengths as the plant file states them, point by point in its order.
stated, here, machine = {}, None, None
for line in plant_path.read_text().splitlines():
    if found := re.match(r'  ([A-Z]+-\d+):$', line):
        machine = found.group(1)
    elif found := re.match(r'      ([a-z0-9-]+):$', line):
        here = f'{machine}/{found.group(1)}'
    elif found := re.search(r'cable-length: \{ value: ([\d.]+) m', line):
        stated.setdefault(here, []).append(float(found.group(1)))
cables = {}
for row in rows_of(folder / 'cable-schedule.xlsx'):
    name, number = row['Cable'].rsplit('/C', 1)
    cables.setdefault(name, []).append(row['Length, m'])
    in_text('cable-schedule', row['Cable'], row['From'])
    in_text('cable-schedule', row['Cable'], row['To'])
for point in points:
    agree(f"{point['point']} cables", cables.get(point['point']), stated.get(point['point']))

result = {
    'points': len(points),
    'compared': counts,
    'files': len(contents['files']),
    'poppler': subprocess.run(['pdfinfo', '-v'], capture_output=True).stderr.decode().split('\n')[0],
    'python': sys.version.split()[0],
    'faults': faults[:50],
    'faultsInAll': len(faults),
}
print(json.dumps(result, indent=2, ensure_ascii=False))
sys.exit(1 if faults else 0)
