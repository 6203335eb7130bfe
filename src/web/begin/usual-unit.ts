/** The unit that a first template begins with, before anybody says. */
import type { Unit } from "../../units/index.js";

/** Inches where the language is of a country that builds in them (common practice), else millimetres. */
export function usualUnit(language: string): Unit {
  return /-(US|CA|PR|GU|LR|MM|BS|BZ)\b/i.test(language) ? "in" : "mm";
}
