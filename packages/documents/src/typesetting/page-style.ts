import { drawingStyle } from '../drawing/style.ts';

const light = `--ink:#16191d;--ink-quiet:#555b63;--paper:#fdfdfb;--rule:#c9ccd0;--rule-fine:#e4e5e7;--slant:#aeb4bb;--accent:#0b5a82;--accent-face:#0b5a8218;--hatch:#16191d1f`;
const dark = `--ink:#e7e6e2;--ink-quiet:#a5a9ae;--paper:#15181b;--rule:#41474d;--rule-fine:#2a2f34;--slant:#5a626a;--accent:#7cc3ea;--accent-face:#7cc3ea22;--hatch:#e7e6e22b`;

/** The one style sheet of all documents: ink on paper, fine lines, one accent; the same sheet on screen and in print. */
export const pageStyle = `
:root{color-scheme:light dark;${light}}
@media screen and (prefers-color-scheme:dark){:root{${dark}}}
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%;text-size-adjust:100%}
body{margin:0;background:var(--paper);color:var(--ink);font:16px/1.5 system-ui,sans-serif;font-variant-numeric:tabular-nums lining-nums}
main{max-width:1240px;margin:0 auto;padding:40px 32px 80px}
h1,h2,h3,h4{line-height:1.2;font-weight:600;text-wrap:balance;overflow-wrap:anywhere}
h1{font-size:34px;margin:0 0 4px;letter-spacing:-.01em}
h2{font-size:25px;margin:64px 0 16px;padding-top:14px;border-top:2px solid var(--ink)}
h3{font-size:20px;margin:44px 0 12px;padding-top:10px;border-top:1px solid var(--rule)}
h4{font-size:16px;margin:30px 0 8px}
h1 .number,h2 .number,h3 .number,h4 .number,.contents .number{color:var(--ink-quiet);font-weight:400;margin-right:.35em}
p,ul,ol,dl{margin:0 0 12px;max-width:76ch}
li{margin-bottom:4px}
a{color:var(--accent)}
p,li,dd,figcaption,th bdi,.contents{overflow-wrap:anywhere}
.quiet{color:var(--ink-quiet)}
.unknown{font-style:italic;border-bottom:1px dotted var(--ink)}
.sign{white-space:nowrap;font-weight:600}
.shape{width:.78em;height:.78em;vertical-align:-.02em}
.title-block{display:grid;grid-template-columns:minmax(0,1fr) minmax(0,26rem);border:1px solid var(--ink);margin-bottom:40px}
.title-block>div{padding:22px 24px}
.title-block .kind{font-size:14px;color:var(--ink-quiet);margin:0 0 6px}
.title-block .of{font-size:17px;margin:0}
.title-block dl{margin:0;border-left:1px solid var(--ink);font-size:14px;line-height:1.35;max-width:none}
.title-block dl div{display:grid;grid-template-columns:9.5rem minmax(0,1fr);border-bottom:1px solid var(--rule);padding:6px 14px}
.title-block dl div:last-child{border-bottom:0}
.title-block dt{color:var(--ink-quiet)}
.title-block dd{margin:0;overflow-wrap:anywhere}
.verdict{font-size:22px;line-height:1.38;max-width:56ch;margin:0 0 14px}
.verdict .sign{font-size:1.05em}
.contents{columns:2;column-gap:48px;font-size:15px;margin:24px 0 0}
.contents ol{list-style:none;margin:0;padding:0;max-width:none}
.contents ol ol{padding-left:1.6em}
.contents li{margin:0;break-inside:avoid;padding:2px 0}
.contents a{text-decoration:none;color:inherit}
.contents a:hover{color:var(--accent);text-decoration:underline}
table{border-collapse:collapse;font-size:14px;line-height:1.38;margin:0 0 8px;width:100%}
.caption{font-weight:600;font-size:14px;margin:0 0 4px;max-width:none}
th{text-align:left;font-weight:600;vertical-align:bottom;border-bottom:1px solid var(--ink);padding:4px 14px 5px 0}
td{vertical-align:top;border-bottom:1px solid var(--rule);padding:5px 14px 5px 0;overflow-wrap:anywhere}
td.text{min-width:6.6em}
th:last-child,td:last-child{padding-right:0}
td.line,td.number,th.number{white-space:nowrap;overflow-wrap:normal}
td.measure{min-width:5em}
tr.group th{padding:14px 0 3px;border-bottom:1px solid var(--rule);font-weight:600}
th.number,td.number{text-align:right}
.line{white-space:nowrap}
.figure{display:inline-block;text-align:right;white-space:pre}
.pushed{overflow-x:auto;margin-bottom:20px}
.folds{margin-bottom:20px}
.note{font-size:14px;color:var(--ink-quiet);max-width:84ch}
.empty{color:var(--ink-quiet)}
figure{margin:20px 0 28px}
figcaption{font-size:14px;line-height:1.45;color:var(--ink-quiet);max-width:84ch;padding-top:8px}
.drawn{max-width:780px}
.with-table{display:grid;grid-template-columns:minmax(0,760px) minmax(0,1fr);gap:36px;align-items:start}
.beside table{font-size:13.5px}
.narrow{display:none}
.finding{border-top:1px solid var(--rule);padding:14px 0 8px;display:grid;grid-template-columns:11rem minmax(0,1fr);gap:0 20px;break-inside:avoid}
.finding h3,.finding h4{border:0;margin:0;padding:0;font-size:16px}
.finding .of{grid-column:2}
.finding dl{grid-column:2;margin:6px 0 0;display:grid;grid-template-columns:8rem minmax(0,1fr);gap:3px 12px;font-size:15px}
.finding dt{color:var(--ink-quiet)}
.finding dd{margin:0;overflow-wrap:anywhere}
.finding dd ul{margin:0;padding-left:1.1em}
.rule-id{font-size:13px;font-weight:400;color:var(--ink-quiet)}
.facts{display:grid;grid-template-columns:12rem minmax(0,1fr);gap:4px 16px;font-size:15px;max-width:76ch}
.facts dt{color:var(--ink-quiet)}
.facts dd{margin:0;overflow-wrap:anywhere}
.pair{display:grid;grid-template-columns:repeat(2,minmax(0,1fr));gap:0 40px}
.caution{border:1px solid var(--ink);padding:14px 18px;max-width:76ch}
.caution p:last-child{margin:0}
.acceptance .with-table{grid-template-columns:minmax(0,560px) minmax(0,1fr)}
.hash{font-family:ui-monospace,monospace;font-size:.8em;overflow-wrap:anywhere}
.told{margin:0;padding:0;list-style:none}.told li{margin:0}
.blank{display:inline-block;min-width:9rem;min-height:2.6em}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
pre{font:13px/1.45 ui-monospace,monospace;white-space:pre-wrap;overflow-wrap:anywhere;border:1px solid var(--rule);padding:8px 12px;max-width:84ch}
:focus-visible{outline:2px solid var(--accent);outline-offset:2px}
${drawingStyle}
@media (max-width:1180px){.with-table{display:block}.beside{margin-top:16px}}
@media (max-width:720px){
main{padding:20px 16px 60px}
h1{font-size:26px}h2{font-size:21px;margin-top:48px}h3{font-size:18px}
.title-block,.pair{display:block}
.title-block dl{border-left:0;border-top:1px solid var(--ink)}
.contents{columns:1}
.verdict{font-size:19px}
.finding,.facts{display:block}
.finding dl{display:block}
.facts dt,.finding dt{margin-top:6px}
.folds table,.folds tbody,.folds tr,.folds td{display:block}
.folds thead{display:none}
.folds tr{border-bottom:1px solid var(--ink);padding:8px 0}
.folds td{border:0;padding:1px 0;display:grid;grid-template-columns:7.6rem minmax(0,1fr);gap:8px;white-space:normal;text-align:left;overflow-wrap:anywhere}
.folds td.none,.folds .pad{display:none}
.folds tr.group{padding:14px 0 2px}.folds tr.group th{display:block;padding:0;border:0}
.pushed.broad table{min-width:720px}
.folds td.text{min-width:0}
.folds td::before{content:attr(data-head);color:var(--ink-quiet)}
.folds .line{white-space:nowrap}
.figure{min-width:0!important;text-align:left;white-space:normal}
}
@media screen and (max-width:720px){.wide{display:none}.narrow{display:block}}
@media print{
:root{--paper:#fff}
body{font-size:9.6pt;line-height:1.38}
main{max-width:none;padding:0}
h1{font-size:17pt}h2{font-size:15pt;margin:22pt 0 8pt}h3{font-size:12pt;margin:16pt 0 6pt}h4{font-size:10pt;margin:12pt 0 4pt}
h2,h3,h4,.caption,h2+.note{break-after:avoid}
p,li{orphans:3;widows:3}
table,.note,figcaption,.caption,.beside table{font-size:8.2pt}
.title-block,.title-block dl{font-size:9pt}
.title-block{grid-template-columns:minmax(0,1fr) minmax(0,1fr);margin-bottom:18pt}
.title-block>div{padding:10pt 12pt}.title-block dl div{padding:2.5pt 9pt;grid-template-columns:7rem minmax(0,1fr)}
.verdict{font-size:13pt}
.contents{font-size:9pt;margin:10pt 0 0}
.finding{grid-template-columns:6.4rem minmax(0,1fr)}.finding dl{grid-template-columns:6.4rem minmax(0,1fr)}
td,th{padding-right:9px}
.finding dl,.facts{font-size:9pt}
thead{display:table-header-group;break-after:avoid}
tr.group{break-after:avoid}
tr,.short,figure .drawn,.caution,.title-block{break-inside:avoid}
.new-sheet{break-before:page}
.new-sheet>h2,.new-sheet>h3{margin-top:0}
.with-table{display:block}
.acceptance .wide{display:none}.acceptance .narrow{display:block}
.acceptance .with-table{display:grid;grid-template-columns:minmax(0,1.35fr) minmax(0,1fr);gap:14pt;margin:8pt 0 12pt;break-inside:avoid}
.drawn{max-width:none}
.pushed{overflow:visible}
a{color:inherit;text-decoration:none}
}
`;
