/** Property tests draw from one seed, so that a run repeats on every machine; RODPLATE_SEED draws other cases. */
import fc from "fast-check";

fc.configureGlobal({ seed: Number(process.env.RODPLATE_SEED ?? 20261124) });
