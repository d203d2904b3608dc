import type { CutScoreReport, StationCut } from "../../cohort/cutscore/report.ts";
import { clean } from "../clean.ts";
import { number } from "../figures.ts";

/* One panel a station, one below the other, in a file that needs nothing else: no scripts, no fonts, no links. */

const WIDTH = 640;
const PANEL = 360;
const LEFT = 60;
const TOP = 50;
const PLOT = { width: 540, height: 250 };
/** Candidates of one rating are drawn a little apart, by their order, so that they can be told. */
const APART = 5;
/** Labels that fit below the plot side by side. */
const MOST_STEPS = 12;

export function cutScoreSvg({ stations, borderline }: CutScoreReport): string {
  const drawn = stations.filter(({ points }) => points.length > 0);
  const panels = drawn.map((station, place) => `<g transform="translate(0 ${place * PANEL})">\n${panel(station, borderline!)}\n</g>`).join("\n");
  const height = Math.max(1, drawn.length) * PANEL;
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${height}" viewBox="0 0 ${WIDTH} ${height}" font-family="sans-serif" font-size="12" role="img">
<title>Scores by global rating, with the cut score</title>
<rect width="${WIDTH}" height="${height}" fill="#fff"/>
${panels}
</svg>
`;
}

function panel({ station, points, regression, decision }: StationCut, borderline: number): string {
  const ratings = [...points.map(({ rating }) => rating), borderline];
  const [low, high] = [Math.min(...ratings) - 0.5, Math.max(...ratings) + 0.5];
  const x = (rating: number) => LEFT + ((rating - low) / (high - low)) * PLOT.width;
  const y = (score: number) => TOP + (1 - score / 100) * PLOT.height;
  const at = (value: number) => number(value, 1);
  const parts = [
    `<text x="${LEFT}" y="20" font-size="15" font-weight="bold">${escape(station || "Station")}</text>`,
    `<text x="${LEFT}" y="38">${escape(caption(decision, regression?.rSquared ?? null, points.length))}</text>`,
    `<rect x="${LEFT}" y="${TOP}" width="${PLOT.width}" height="${PLOT.height}" fill="none" stroke="#888"/>`,
    ...[0, 25, 50, 75, 100].map((score) => `<text x="${LEFT - 8}" y="${at(y(score) + 4)}" text-anchor="end">${score}</text>`),
    ...wholeSteps(low, high).map((rating) => `<text x="${at(x(rating))}" y="${TOP + PLOT.height + 16}" text-anchor="middle">${rating}</text>`),
    `<text x="${LEFT + PLOT.width / 2}" y="${TOP + PLOT.height + 34}" text-anchor="middle">global rating by people</text>`,
    `<text transform="translate(16 ${TOP + PLOT.height / 2}) rotate(-90)" text-anchor="middle">score in per cent</text>`,
    `<line x1="${at(x(borderline))}" y1="${TOP}" x2="${at(x(borderline))}" y2="${TOP + PLOT.height}" stroke="#555" stroke-dasharray="4 4"/>`,
  ];
  if (decision !== null) {
    const clamp = (score: number) => Math.min(100, Math.max(0, score));
    if (decision.standardError !== null) {
      const [top, bottom] = [y(clamp(decision.cut + decision.standardError)), y(clamp(decision.cut - decision.standardError))];
      parts.push(`<rect x="${LEFT}" y="${at(top)}" width="${PLOT.width}" height="${at(bottom - top)}" fill="#d55e00" fill-opacity="0.2"/>`);
    }
    parts.push(`<line x1="${LEFT}" y1="${at(y(clamp(decision.cut)))}" x2="${LEFT + PLOT.width}" y2="${at(y(clamp(decision.cut)))}" stroke="#d55e00" stroke-width="2"/>`);
  }
  if (regression !== null && regression.slope !== null && regression.intercept !== null) {
    const ends = inside(regression.intercept, regression.slope, low, high)?.map(([rating, score]) => `${at(x(rating))},${at(y(score))}`);
    if (ends !== undefined) parts.push(`<polyline points="${ends.join(" ")}" fill="none" stroke="#0072b2" stroke-width="2"/>`);
  }
  points.forEach(({ rating, score, candidate }, place) => {
    const aside = ((place % APART) - (APART - 1) / 2) * 3;
    parts.push(`<circle cx="${at(x(rating) + aside)}" cy="${at(y(score))}" r="3.5" fill="#000" fill-opacity="0.55"><title>${escape(candidate)}: ${at(score)}%</title></circle>`);
  });
  return parts.join("\n");
}

/** The part of the line between 0 and 100 per cent, as two ends: a line whose end is moved up or down is another line. */
function inside(intercept: number, slope: number, low: number, high: number): [number, number][] | undefined {
  const crossings = slope === 0 ? [] : [0, 100].map((score) => (score - intercept) / slope).sort((a, b) => a - b);
  const [from, to] = [Math.max(low, crossings[0] ?? low), Math.min(high, crossings[1] ?? high)];
  const score = (rating: number) => Math.min(100, Math.max(0, intercept + slope * rating));
  return from >= to || (slope === 0 && (intercept < 0 || intercept > 100)) ? undefined : [[from, score(from)], [to, score(to)]];
}

/** Whole numbers of the axis, thinned out where there are many. */
function wholeSteps(low: number, high: number): number[] {
  const step = Math.max(1, Math.ceil((high - low) / MOST_STEPS));
  const first = Math.ceil(low / step) * step;
  return Array.from({ length: Math.floor((high - first) / step) + 1 }, (_, place) => first + place * step);
}

function caption(decision: StationCut["decision"], rSquared: number | null, n: number): string {
  if (decision === null) return `${n} candidates; no cut could be had`;
  const error = decision.standardError === null ? "" : `, standard error ${number(decision.standardError)}`;
  return `${n} candidates; cut ${number(decision.cut)}% by ${decision.method}${error}${rSquared === null ? "" : `; R squared ${rSquared.toFixed(2)}`}`;
}

function escape(text: string): string {
  return clean(text).replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}
