#!/usr/bin/env node
/** The program: hands the process's arguments and streams over and sets the exit code. */
import { boundHeapGrowth } from "./heap.js";
import { runProgram } from "./run.js";
import { processShell } from "./shell.js";

boundHeapGrowth();
process.exitCode = await runProgram(process.argv.slice(2), processShell());
