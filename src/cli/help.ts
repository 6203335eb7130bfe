/** Help texts. */
import type { Printable } from "../diagnostics/printable.js";
import { terminalText } from "../diagnostics/printable.js";
import type { CommandName } from "./arguments.js";

const GENERAL = `rodplate: from a column-base schedule to setting templates that are right: checked, drawn and ready to cut.

  rodplate open [JOB]                the page: a job typed on its drawing, on this machine alone
  rodplate start [NAME] --out FILE   write a commented starter job
  rodplate read FILE [--out JOB]     what is understood of a schedule as it was sent, and the job that it gives
  rodplate check JOB [MARK...]       read, compute and print what a checker needs first, or bases with all their values; write nothing
  rodplate make JOB --out DIR        write the whole package into DIR
  rodplate compare OLD NEW           what changed between two jobs or packages, and what must be cut again
  rodplate proof FILE|DIR... [--against JOB]
                                     what is wrong with any cut file (DXF) or package, and which template it is
  rodplate sign PACKAGE --by NAME    record who has checked a package, bound to the hashes of its files
  rodplate budget JOB                worst case and probability that each base plate drops on
  rodplate survey JOB POINTS         surveyed rods against their places, and whether each base plate drops on
  rodplate help [COMMAND]            more about a command
  rodplate --version                 the version

Exit code: 0 made, nothing is held; 1 made, but something is held; 2 the input is at fault, nothing written;
3 a fault of the program. For compare: 1 something that is cut or made already must be cut or made again.
For read: 1 something is asked. For proof: 1 a file is not to be cut as it is, or not as checked. For sign: 1 signed with
something held or asked. For survey: 1 a base plate does not drop on,
or a rod or column is outside its tolerance.
Progress and messages go to standard error. NO_COLOR and COLUMNS are honoured.
`;

const OPEN = `rodplate open [JOB] [--port N] [--no-browser]

Serves the page to this machine alone (127.0.0.1), prints its address and opens it in the browser; ends with Ctrl-C. With JOB
that job is open on it, and Save writes it, whole or not at all; where JOB was changed on the disk since it was opened it is
never written over, and the page asks. Of the folder of JOB the page can read the files that JOB names, and no other. What is
typed is kept in the browser meanwhile. Nothing is sent anywhere.

  --port N       the port; 0: any that is free. Without it 24118, so that the browser finds what it kept at this address, or
                 any that is free where that one is in use
  --no-browser   print the address and open nothing

Exit code: 0 when it was ended; 2 JOB or the port is at fault.
`;

const START = `rodplate start [NAME] --out FILE

Writes a commented starter job to FILE, which must not be there yet. Without NAME: the first of the list below.

`;

const READ = `rodplate read FILE [--out JOB.yaml] [--table FILE.csv|FILE.xlsx] [--unit in|mm] [--faults FILE] [--json]

Reads a schedule as the engineer sent it and says what was understood: what each heading was taken as, the bases as a table to
tick off against the print, what was taken otherwise than it is written, what was left out and why, and what is asked, each
question with the lines that answer it. FILE is a spreadsheet (XLSX, CSV, or text pasted from one), or a job that names one with
schedule or readFrom, whose answers are used. Nothing is written without an option that says so.

  --out JOB.yaml   write the job: first a part that is yours, with lines to fill in for what is asked; below a line of signs #
                   the bases, once nothing is asked. Where JOB.yaml is there from an earlier reading, your part is kept byte for
                   byte, its answers are used, and the bases are written anew; a file that was not written by read, or whose
                   bases somebody changed, is never written over
  --table FILE     write every line of the read-as table to FILE, which must not be there yet; .xlsx has room for the ticks
  --unit in|mm     unit of bare numbers, where neither the job nor the cells say it
  --faults FILE    write every fault, question and warning to FILE (CSV), which must not be there yet, a line each
  --json           the machine form, or {"findings": [...]} when FILE cannot be read, and nothing else

Exit code: 0 all is understood; 1 something is asked or at fault in the sheet, JOB.yaml then has no bases; 2 FILE cannot be
read or a file cannot be written.
`;

const CHECK = `rodplate check JOB [MARK...] [--faults FILE] [--all] [--json]

Reads JOB and the files it names, runs every check and prints a screen of what it finds, whatever the size of the job: what is
held and why, questions to the engineer of record, advice, the closest of what passes, and which keys of the job would have
most of the rows checked that lack something. Writes nothing. Faults of the input are told once a cause, at most 20 causes.

  MARK...         these bases alone, each with every row that fails, is not checked or has a margin, with values, limits and
                  clauses; the mark of a template stands for every base that it serves. The whole job is checked all the same
  --faults FILE   write every fault and warning of the input, one a line, into FILE (CSV), which must not be there yet
  --all           every row of every base, or of these, on a line of its own, passes and rows that do not apply included
  --json          the summary in machine form, or {"findings": [...]} when the input is at fault, and nothing else; with MARK
                  these bases alone, with what the job asks and says of them
`;

const MAKE = `rodplate make JOB --out DIR [--paper NAME] [--replace] [--include-held] [--faults FILE] [--all] [--json]

Writes the package, by who opens it: cut files (steel), drill lists and prints in full size (plywood) and the cut list into
cut/, sheets into sheets/, rod lists, details, travellers, labels and quote into rods/, setting sheets and setting-out files
into field/, checking page, ledger, certificates, questions, letter and answer form into engineer/, solids into machine/; at
its top START-HERE.txt, which says what to open first, the set of all sheets in one PDF, and summary.json, which lists every
file. Numbers of questions go on from the package in DIR.
DIR must be absent, empty, or an earlier package of the same job; it is replaced by renames beside it
(.DIR.new-..., .DIR.old), so that a package is whole or not there at all. A package of another revision is kept in
DIR/superseded, and what must be cut or made again is told. Files that somebody added stay, or go with their revision; files
that somebody changed are set aside in DIR/set-aside. Each is named, and none is lost.

  --paper NAME     put the pages of the set on one paper: letter, tabloid (11x17), a4 or a3; a sheet whose border fits stands at
                   its full size, one of twice the paper at half size exactly, any other is reduced, and says so beside its
                   border. Without it each page has the size of its sheet
  --replace        erase the package in DIR where it would be kept, or where it is of another job
  --include-held   also write the cut files of held bases, with HELD in their names
  --faults FILE    write every fault and warning of the input, one a line, into FILE (CSV), which must not be there yet
  --all            print every ledger row of every base; otherwise a screen, as check does
  --json           print summary.json, with what became of the package before it under "earlier", or {"findings": [...]} when
                   the input is at fault, and nothing else

A job without a date is dated today, or by SOURCE_DATE_EPOCH where that is set.
`;

const COMPARE = `rodplate compare OLD NEW [--json]

Compares two states of a job, each a job file or the folder of a package, and tells template by template, worst first,
what must be cut again, which holes moved and how far, what is new, gone or held. Holes are matched by place, since tags
may be renumbered. Then the rods, group by group: which must be made again, which are set otherwise, how many more. Units may
differ. Every file that a package lists is held against its size and hash: a changed cut file is refused, changed papers and
files that somebody added are named. Writes nothing.

A template counts as cut when OLD handed out a file to cut or drill by: a package that has one, a job that does not hold
it. A revision letter or another mark alone is no recut: such templates are listed as MARKS ONLY.

Where OLD is a package that somebody signed: who and when, what of it changed and is to be looked at again, how much is not.

  --json   the machine form, or {"findings": [...]} when OLD or NEW is at fault, and nothing else

Exit code: 0 nothing must be cut again and no rods made again; 1 something must; 2 OLD or NEW is at fault.
`;

const PROOF = `rodplate proof FILE|DIR... [--against JOB] [--json]

Reads cut files, whoever drew them, and tells what is wrong with them, worst first. STOP: something would be cut wrongly, or
it cannot be known what is meant. LOOK: it is read rightly here, but some control may not, or somebody should look.
Read are LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE, inserted blocks, and SPLINE and ELLIPSE that are circles, arcs or lines
within 0.025 mm. Ends within 0.01 mm are joined, and a gap is told. A file over 32,000,000 bytes is refused unread.
Writes nothing.

DIR is the folder of a package: every file that its summary lists is held against its size and hash, every cut file is read
again and held against its certificate and its own template, and the summary against its seal; what is missing, changed or
not listed is told, and who signed the package and whether that still stands. Of any other folder: every DXF file and package.
Without a signature it is known that the files agree with each other, not that nobody has written all of them anew.

  --against JOB   say which template or base plate of JOB each file is (by its name, else by its holes), at any origin and
                  turn, mirrored, or exactly 25.4 or 12 times too large or small; every hole off by more than 0.05 mm in
                  place or diameter, holes missing or too many, and an outline that strays by more than 0.1 mm
  --json          the machine form, or {"findings": [...]} when JOB is at fault, and nothing else

Exit code: 0 nothing has a STOP; 1 a file has, or is not the one that was checked, or a signature is VOID; 2 a file cannot
be opened, or JOB is at fault.
`;

const SIGN = `rodplate sign PACKAGE --by NAME [--note TEXT] [--json]

Records that NAME has checked the package in the folder PACKAGE: name, day, note, and the hashes of summary.json and of every
file that it lists, in engineer/signed. Before that all is proved again as by rodplate proof; where a file is not the one that
was checked nothing is signed, and every fault is told. What is HELD, not released or asked and not answered is named, and
stands in the record. Several people may sign. CHECKED BY on the sheets stays empty.

A signature is void when a byte of the package is another: make, proof and compare then say so, what is to be looked at again
and how much is untouched. A make that gives the same bytes leaves it standing; give the job a date, which every sheet bears.
A record is never erased: it goes with its revision into superseded, or stays beside the new package.

It is a record bound to hashes, no proof of identity: whoever can write to the folder can write one in any name. It stands for
no seal of a licensed engineer; local codes and licensed practice govern.

  --by NAME     who has checked, at most 100 characters
  --note TEXT   what is to be said of it, at most 1000 characters
  --json        the machine form, or {"findings": [...]} when nothing was signed, and nothing else

Exit code: 0 signed; 1 signed, but something is held or a question is open, which the record lists; 2 nothing was signed.
`;

const BUDGET = `rodplate budget JOB [--out DIR] [--json]

Holds the position errors that rods may have against the clearance of the base plate's holes: for each base the worst case,
the root of the sum of squares, and the probability that the plate drops on, worst first; which rod and which error govern;
and, where JOB names budget.target, the smallest holes or the widest placing that reach it. Trials are drawn from a seed:
the same job gives the same figures. The key budget of JOB says how errors are taken; without it, the as-placed tolerance
of the placing edition, even over a round zone, for a plate that may shift and turn.

  --out DIR   write budget.csv, budget-rods.csv and a sheet a base, with the spread of the spare clearance, into DIR,
              which must be absent or empty
  --json      the machine form, or {"findings": [...]} when the input is at fault, and nothing else

Exit code: 0 whatever comes out, the engineer decides; 2 the input or DIR is at fault.
`;

const SURVEY = `rodplate survey JOB POINTS [--unit U] [--order O] [--accuracy A] [--height H] [--within W]
                           [--out DIR] [--all] [--json]

Reads the surveyor's file of points (CSV, with or without a heading), finds the rod of each point by the names of the
setting-out file, else the one rod that is near, and tells group by group, worst first: errors of the rods, best-fit shift
and turn, the placing edition, and whether the base plate drops on: fits, does not fit, or within measuring uncertainty.
Local or site coordinates are found by nearness. A second point NAME_T or NAME_B, or one whose description says top or
bottom, tells a rod's lean. Where a plate does not drop on: which holes, and what larger hole or slot would let it, each
with the checks of washer and edge again. Engineer to decide.

  --unit U       m, mm, ft or ft-us; omitted: as the file's name or heading says (m, mm, ft-intl, ft-us)
  --order O      PNEZD or PENZD; omitted: as the file's name or heading says, else as settingOut in JOB
  --accuracy A   every point lies within this radius of the true place; omitted: survey.accuracy in JOB
  --height H     top, or the length above the top of concrete at which rods were taken; omitted: survey.height in JOB
  --within W     how near a point without a known name must lie; omitted: survey.within in JOB, else 2 in or 50 mm
  --out DIR      write survey-groups.csv, survey-rods.csv, survey-checks.csv, the report to the engineer (survey-report.pdf,
                 .txt to paste) and a sheet for each group that does not plainly fit or is outside its tolerance into DIR,
                 which must be absent or empty
  --all          every group in full, and a sheet for each
  --json         the machine form, or {"findings": [...]} when the input is at fault, and nothing else

Exit code: 0 no plate fails to drop on and nothing is outside its tolerance; 1 one does, or something is;
2 JOB, POINTS, an option or DIR is at fault.
`;

/** Help about a command, or about all of them. `starters` are the names of the starter jobs. */
export const helpText: (about: CommandName | null, starters: readonly string[]) => Printable = terminalText(wordsOf);

function wordsOf(about: CommandName | null, starters: readonly string[]): string {
  switch (about) {
    case null:
      return GENERAL;
    case "open":
      return OPEN;
    case "start":
      return `${START}${starters.map((name) => `  ${name}\n`).join("")}`;
    case "read":
      return READ;
    case "check":
      return CHECK;
    case "make":
      return MAKE;
    case "compare":
      return COMPARE;
    case "proof":
      return PROOF;
    case "sign":
      return SIGN;
    case "budget":
      return BUDGET;
    case "survey":
      return SURVEY;
  }
}
