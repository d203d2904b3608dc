import type { MarkSheet } from "../scoring/types.ts";

export function wrapped(text: string, columns: number): string[];
export function demoTable(rehearsals: readonly { title: string; sheet: Pick<MarkSheet, "result" | "total" | "critical" | "unsafe" | "time"> }[], width: number): string;
