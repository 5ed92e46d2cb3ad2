/** The day so many months on; the last day of the month where the day does not exist. @param day `2026-11-25` */
export function inMonths(day: string, months: number): string {
  const [year = 1970, month = 1, date = 1] = day.split("-").map(Number);
  const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate();
  return new Date(Date.UTC(year, month - 1 + months, Math.min(date, last))).toISOString().slice(0, 10);
}
