// What is pointed out about the remarks under a cell as they were read: words not known, said twice, money that adds to nothing.
import type { DraftCell, DraftFinding } from './draft-section.ts';
import { RECAP_OF } from './recap-table.ts';
import { moneyWords, remarkText } from './remarks.ts';

/** What its remarks say that is not known, twice, or adds to no total. */
export function remarkFindings(cell: DraftCell): readonly DraftFinding[] {
  const findings: DraftFinding[] = [];
  const { remarks, name } = cell;
  for (const remark of remarks) {
    if (remark.kind !== null) continue;
    findings.push({
      code: 'remark-not-known',
      message: `"${remark.word}" under "${name}" is not a remark known here, so it is kept and not used.`,
      cell,
      spot: remark.spot,
    });
  }
  for (const line of ['cost', 'price'] as const) {
    const text = remarkText(remarks, line);
    if (text === null || (line === 'price' && remarkText(remarks, 'cost') !== null)) continue;
    if (cell.money) continue;
    if (cell.table) {
      findings.push({
        code: 'money-on-table',
        message: `"${name}" is a table, which is no amount, so it adds to no total. Add its column up in a cell of its own and put ${line} there.`,
        cell,
        spot: remarks.find((r) => r.kind === line)?.spot ?? cell.spot,
      });
      continue;
    }
    findings.push({
      code: 'money-not-known',
      message: `"${name}" says ${line}: ${text}, which adds to no total. Known are ${moneyWords(line)}.`,
      cell,
      spot: remarks.find((r) => r.kind === line)?.spot ?? cell.spot,
    });
  }
  const recap = remarks.find((r) => r.kind === 'recap');
  if (recap && recap.text.trim().toLowerCase() !== RECAP_OF) {
    findings.push({
      code: 'recap-not-known',
      message: `"${name}" asks for a recap of "${recap.text}". One is drawn of ${RECAP_OF}.`,
      cell,
      spot: recap.spot,
    });
  }
  for (const kind of ['cost', 'price', 'by hand', 'sensible', 'moves with'] as const) {
    const again = remarks.filter((r) => r.kind === kind)[1];
    if (!again) continue;
    findings.push({
      code: 'remark-twice',
      message: `"${name}" says ${kind} twice; the first one is used.`,
      cell,
      spot: again.spot,
    });
  }
  if (remarkText(remarks, 'cost') !== null && remarkText(remarks, 'price') !== null) {
    findings.push({
      code: 'cost-and-price',
      message: `"${name}" is a cost line and a price line; it is counted as cost.`,
      cell,
      spot: cell.spot,
    });
  }
  return findings;
}
