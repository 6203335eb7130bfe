/** 29 CFR 1926 and Design Guide 1: cautions that belong on the outputs. */
import { type Fact, fact as row } from "../fact.js";

/** Topic, item, value, source, confidence. */
export const cautions: readonly Fact[] = [
  row("29 CFR 1926.755(a)(1)", "", "min 4 anchor rods per column", "secondary copy", "high"),
  row(
    "1926.755(a)(2)",
    "",
    "assembly must resist 300 lb gravity load at 18 in from column extreme outer face in each direction, at top of column",
    "secondary copy",
    "high",
  ),
  row(
    "1926.755(a)(3)",
    "",
    "set on level floor, pre-grouted leveling plates, leveling nuts or shim packs adequate for load",
    "secondary copy",
    "high",
  ),
  row("1926.755(a)(4)", "", "competent person determines need of guying/bracing", "secondary copy", "high"),
  row(
    "1926.755(b)(1)",
    "",
    "no repair, replacement or field modification of rods without project structural engineer of record approval",
    "secondary copy",
    "high",
  ),
  row(
    "1926.755(b)(2)",
    "",
    "controlling contractor gives written notice to erector of any rod repair before erection",
    "secondary copy",
    "high",
  ),
  row(
    "1926.752(a)(1)",
    "",
    "written notice that footing, pier, wall concrete reached 75% of intended strength or enough for loads",
    "OSHA letter 2005-12-23",
    "high",
  ),
  row("1926.752(a)(2)", "", "written notice of anchor-rod repairs as required by 755(b)", "from memory", "from memory"),
  row("1926.752(b)", "", "erector shall not erect without the written notice", "OSHA letter 2005-12-23", "high"),
  row("1926.751 / posts", "", "posts of <=300 lb fall outside column rule", "OSHA text", "medium"),
  row(
    "1926.701(b)",
    "",
    "protruding rebar onto and into which employees could fall is guarded against impalement",
    "OSHA letters 1993, 1994",
    "high",
  ),
  row("OSHA letter 2006-04-24", "", "non-rebar projections come under the General Duty Clause", "OSHA letter", "high"),
  row("AISC DG1 2nd ed", "", "3/4 rods on 4x4 pattern satisfy 1926.755 for typical columns", "AISC DG1 2nd ed", "high"),
  row(
    "AISC DG1",
    "",
    "field bend only Gr36: cold up to about 1 in and <=45 deg; hot <=1200 F (650 C); none within threads; Gr55/105 not bent",
    "AISC DG1 2nd ed",
    "high",
  ),
  row(
    "AISC DG1",
    "",
    "no welding of nut or tack to plate without approval; mis-set rods go to EOR",
    "AISC DG1",
    "high",
  ),
  row(
    "Template",
    "",
    "never cut or enlarge template/base-plate holes to suit misplaced rods without EOR",
    "AISC DG1 3rd ed / common practice",
    "medium",
  ),
  row(
    "Exposed rods",
    "",
    "cap or barricade projecting rods; nuts on during pour",
    "common practice",
    "common practice",
  ),
];
