import type { FindingLog } from "./finding-log.ts";

/**
 * Named character references of HTML that turn up in captions beyond those that the caption parser knows:
 * punctuation, fractions, units and the accented letters of Western Europe. Source: HTML Living Standard, named
 * character references. The WebVTT text (section 6.4) allows all of HTML's; one that is not here stays as written.
 */
const NAMED: Readonly<Record<string, string>> = {
  apos: "'", hellip: "…", ndash: "–", mdash: "—", lsquo: "‘", rsquo: "’", ldquo: "“", rdquo: "”", laquo: "«", raquo: "»",
  bull: "•", middot: "·", deg: "°", micro: "µ", plusmn: "±", times: "×", divide: "÷", frac12: "½", frac14: "¼", frac34: "¾",
  sup2: "²", sup3: "³", pound: "£", euro: "€", cent: "¢", copy: "©", reg: "®", trade: "™", sect: "§", para: "¶", shy: "\u00ad",
  thinsp: "\u2009", ensp: "\u2002", emsp: "\u2003", zwj: "\u200d", zwnj: "\u200c", iexcl: "¡", iquest: "¿", dagger: "†",
  agrave: "à", aacute: "á", acirc: "â", atilde: "ã", auml: "ä", aring: "å", aelig: "æ", ccedil: "ç", egrave: "è", eacute: "é",
  ecirc: "ê", euml: "ë", igrave: "ì", iacute: "í", icirc: "î", iuml: "ï", ntilde: "ñ", ograve: "ò", oacute: "ó", ocirc: "ô",
  otilde: "õ", ouml: "ö", oslash: "ø", oelig: "œ", ugrave: "ù", uacute: "ú", ucirc: "û", uuml: "ü", yacute: "ý", yuml: "ÿ",
  szlig: "ß", Agrave: "À", Aacute: "Á", Acirc: "Â", Auml: "Ä", Aring: "Å", AElig: "Æ", Ccedil: "Ç", Egrave: "È", Eacute: "É",
  Ecirc: "Ê", Euml: "Ë", Ntilde: "Ñ", Ograve: "Ò", Oacute: "Ó", Ocirc: "Ô", Ouml: "Ö", Oslash: "Ø", Uacute: "Ú", Uuml: "Ü",
};

/** Those that the caption parser replaces itself, after it has split the text into tags. */
const LEFT_TO_PARSER = new Set(["amp", "lt", "gt", "quot", "nbsp", "lrm", "rlm"]);

/** Replaces character references, except those that the caption parser replaces itself. `line` is for the finding. */
export function decodeEntities(text: string, line: number, log: FindingLog): string {
  return text.replace(/&(?:#(\d{1,7})|#[xX]([0-9a-fA-F]{1,6})|([A-Za-z][A-Za-z0-9]{1,31}));/g, (whole, decimal, hex, name) => {
    if (name !== undefined) {
      if (LEFT_TO_PARSER.has(name)) return whole;
      const character = NAMED[name as string];
      if (character !== undefined) return character;
      log.add({ code: "SW-T16", severity: "info", line, kind: "entity", message: `the character reference ${whole} is not known and stays as written` });
      return whole;
    }
    const code = decimal === undefined ? Number.parseInt(hex as string, 16) : Number(decimal);
    if (code === 0x3c) return "&lt;";
    if (code === 0x26) return "&amp;";
    return code > 0 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff) ? String.fromCodePoint(code) : "\uFFFD";
  });
}
