/**
 * The one template of all documents, in the language of the typesetter. It holds no text of any plant: the record comes
 * in as JSON and every text of it is set as a plain string, so nothing in it can act as markup.
 */
export const template = `
#let record = json(bytes(sys.inputs.at("record")))
#let issue = record.issue
// Whatever is set anew on each page holds on to short values only: the whole record would be weighed on every page.
#let title = record.title
#let paper = sys.inputs.at("paper")
#let ink = rgb("#111417")
#let quiet = rgb("#4a5058")
#let rule = 0.4pt + rgb("#8d939a")
#let fine = 0.3pt + rgb("#c3c7cb")
#let landscape = record.orientation == "landscape"
#let sides = (a4: (210mm, 297mm), a3: (297mm, 420mm), us-letter: (8.5in, 11in)).at(paper)
#let page-height = if landscape { sides.first() } else { sides.last() }

#set document(title: record.documentTitle, author: (), keywords: (record.kind, "revision " + issue.revision), date: if record.year == 0 { none } else { datetime(year: record.year, month: record.month, day: record.day) })
#set text(font: "Inter", size: 8.6pt, fill: ink, lang: "en", region: "GB", number-type: "lining", hyphenate: false, fallback: false)
#set par(leading: 0.52em, spacing: 0.75em, justify: false)

#let line-of(term, value) = (text(fill: quiet, size: 6.6pt, term), text(size: 7.6pt, value))

#let title-block = block(width: 100%, stroke: 0.7pt + ink, inset: 0pt, below: 4mm, grid(
  columns: (1fr, auto),
  block(inset: (x: 3mm, y: 2.4mm), {
    text(size: 7.4pt, fill: quiet, issue.plant)
    linebreak()
    text(size: 13pt, weight: 600, record.title)
  }),
  block(stroke: (left: 0.7pt + ink), inset: (x: 3mm, y: 2mm), grid(
    columns: (auto, 34mm, auto, 26mm),
    column-gutter: 2.4mm,
    row-gutter: 1.5mm,
    ..line-of("owner", issue.owner), ..line-of("revision", issue.revision),
    ..line-of("project", issue.project), ..line-of("date", issue.date),
    ..line-of("prepared by", issue.preparedBy), ..line-of("content", issue.contentHash.slice(0, calc.min(16, issue.contentHash.len()))),
  )),
))

#let foot = context {
  set text(size: 6.8pt, fill: quiet)
  line(length: 100%, stroke: rule)
  v(-1.2mm)
  grid(
    columns: (1fr, auto, auto),
    column-gutter: 6mm,
    issue.plant + ": " + title + ", revision " + issue.revision,
    text("content " + issue.contentHash.slice(0, calc.min(16, issue.contentHash.len()))),
    align(right, text("page " + str(counter(page).get().first()) + " of " + str(counter(page).final().first()))),
  )
}

#let head = if "preliminary" in issue {
  align(center, text(size: 7.6pt, weight: 600, "PRELIMINARY, not for construction: " + issue.preliminary))
} else { none }

#set page(paper: paper, flipped: landscape, margin: (x: 14mm, top: 14mm, bottom: 15mm), header: head, header-ascent: 25%, footer: foot, footer-descent: 20%)

#show heading.where(level: 1): it => block(above: 0pt, below: 3mm, text(size: 11pt, weight: 600, it.body))
#show heading.where(level: 2): it => block(above: 4.4mm, below: 2mm, sticky: true, text(size: 9pt, weight: 600, it.body))

#let decimals(shown) = {
  let parts = shown.split(".")
  if parts.len() > 1 { parts.at(1).len() } else { -1 }
}
// Figures of one column stand on their decimal: what is missing behind it is filled with hidden figures.
#let aligned(shown, most) = {
  let own = decimals(shown)
  let tail = if own < 0 and most >= 0 { "." + "0" * most } else { "0" * calc.max(0, most - own) }
  if regex("^[−±+]?[0-9.]+$") in shown { text(shown) + hide(text(tail)) } else { text(shown) }
}

#let set-cell(cell, column, most) = {
  if cell.is == "text" { cell.text }
  else if cell.is == "number" { align(right, box(text(number-width: "tabular", aligned(cell.shown, most)))) }
  else if cell.is == "measure" { box(text(cell.shown + sym.space.nobreak + cell.unit)) }
  else if cell.is == "unknown" { emph(underline(stroke: (thickness: 0.4pt, dash: "dotted"), offset: 1.4pt, "unknown")) }
  else if cell.is == "none" { align(if column.kind == "number" { right } else { left }, text(fill: quiet, "–")) }
  else { v(4.2mm, weak: false) }
}

#let set-table(block-of) = {
  let columns = block-of.columns
  if block-of.caption != "" { block(above: 3.4mm, below: 1.6mm, sticky: true, text(weight: 600, size: 8.4pt, block-of.caption)) }
  if block-of.rows.len() == 0 { text(fill: quiet, block-of.empty) } else {
    let most = range(columns.len()).map(at => calc.max(-1, ..block-of.rows.map(row => if row.at(at).is == "number" { decimals(row.at(at).shown) } else { -1 })))
    let small = if columns.len() > 9 { 7pt } else { 7.8pt }
    set text(size: small)
    table(
      columns: columns.map(column => column.width * 1fr),
      stroke: (x, y) => (bottom: if y == 0 { 0.7pt + ink } else { fine }, rest: if columns.at(x).kind == "blank" and y > 0 { fine } else { none }),
      inset: (x: 1.4mm, y: 1.15mm),
      table.header(..columns.map(column => {
        set text(weight: 600)
        set align(if column.kind == "number" { right } else { left })
        column.head + if "unit" in column { ", " + column.unit } else { "" }
      })),
      ..block-of.rows.map(row => range(columns.len()).map(at => set-cell(row.at(at), columns.at(at), most.at(at)))).flatten(),
    )
  }
}

#let set-block(each) = {
  if each.is == "heading" { heading(level: 2, text(each.text)) }
  else if each.is == "paragraph" { par(each.text) }
  else if each.is == "note" { par(text(size: 7.2pt, fill: quiet, each.text)) }
  else if each.is == "caution" { block(width: 100%, stroke: 0.9pt + ink, inset: 2.6mm, breakable: false, { text(weight: 600, "Caution. "); each.text }) }
  else if each.is == "list" { list(..each.entries, indent: 0pt, body-indent: 1.6mm, spacing: 1.3mm) }
  else if each.is == "facts" {
    block(width: 100%, grid(columns: (44mm, 1fr), column-gutter: 3mm, row-gutter: 1.5mm,
      ..each.facts.map(fact => (text(fill: quiet, fact.term), fact.value)).flatten()))
  }
  else if each.is == "derivation" {
    let found = each.derivation
    block(width: 100%, inset: (left: 4mm), stroke: (left: 0.6pt + quiet), breakable: false, {
      text(fill: quiet, found.formula)
      if "substituted" in found { linebreak(); found.substituted }
      for each in found.notes { linebreak(); text(size: 7.2pt, fill: quiet, each) }
    })
  }
  else if each.is == "drawing" {
    block(breakable: false, width: 100%, {
      layout(size => {
        // Across the page, unless it would then be taller than most of it.
        let across = if each.wide { size.width } else { calc.min(size.width, each.width * 0.75pt) }
        let most = page-height * if landscape { 0.62 } else { 0.6 }
        align(center, image(bytes(each.svg), format: "svg", width: calc.min(across, most * each.width / each.height), alt: each.description))
      })
      par(text(size: 7.2pt, fill: quiet, each.caption))
    })
  }
  else if each.is == "table" { set-table(each) }
  else if each.is == "signatures" {
    block(breakable: false, above: 5mm, width: 100%, grid(
      columns: (26mm, 1fr, 30mm, 1fr), stroke: 0.4pt + ink, inset: 2mm,
      ..("", "Name", "Date", "Signature").map(word => text(size: 7pt, fill: quiet, word)),
      ..each.signed.map(who => (text(who), v(5mm), [], [])).flatten(),
    ))
  }
}

#title-block
#for (at, sheet) in record.sheets.enumerate() {
  if at > 0 { pagebreak(weak: true) }
  heading(level: 1, sheet.title)
  for each in sheet.blocks { set-block(each) }
}
`;
