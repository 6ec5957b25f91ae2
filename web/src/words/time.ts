/** Time left, as large digits: minutes and seconds, rounded up so that it never shows less than is left. */
export function countdown(millis: number): string {
  const seconds = Math.ceil(millis / 1000);
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  const rest = String(seconds % 60).padStart(2, '0');
  return hours > 0 ? `${hours}:${String(minutes).padStart(2, '0')}:${rest}` : `${minutes}:${rest}`;
}
