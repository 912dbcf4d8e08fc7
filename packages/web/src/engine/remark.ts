/** What the catalogue remarks of a part; nothing where it remarks nothing. */
export function remarkOf(part: { name: string }): string {
  const remark = (part as { remark?: unknown }).remark;
  return typeof remark === 'string' ? remark : '';
}
