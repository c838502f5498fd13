import { workingFor, notebook } from './kestrel.ts';
import { workingText } from '../../src/explain/text.ts';
const formulas = `slab length by slab width by thickness
slab length by slab width by thickness, in cubic yards
slab length by slab width by thickness plus waste, in bags of 0.45 cubic feet
(slab length by slab width by thickness) divided by bag yield, rounded up
36 bags at bag price
3 at bag price
slab length by slab width by thickness plus waste, in bags of bag yield
36 boards at bag price
slab length plus bag price
joists every 16 in along deck width
joists every 16 in along 12 ft
total rise divided by 7 risers
total rise divided by 7 3/4 in, rounded up
1,260 screws in boxes of 350 screws
640 sq ft at 40 sq ft per hour, at $50 per hour
slab length by slab width plus 10% at $5 per sq ft
$1,000 marked up 20%
$1,000 for a 20% margin
$7,500 for 10% overhead and 15% profit
12 ft at 1/4 in per ft
fewest balusters of 1 1/2 in across 72 in with gaps under 4 in
$1,000 ÷ (1 − 10% − 15%)
$1,000 plus 12% overhead plus 10% profit
10.8 ft
8:30 hours at $50 per hour
50 boards plus 10%, rounded up
2/3 times 3, rounded up
1 ft divided by 3, times 3
10 ft - 7-1/2 in
thickness or 5 in, whichever is greater, plus 1 in
total of $100, $100 and $100 plus 10%
5 pieces of 9 ft from 16 ft boards
3 people times 8 hours at $50 per hour per person
diagonal of 3 ft and 4 ft
6 in where thickness is less than 4 in, otherwise 4 in
12 ft rounded up
0.6 cubic yards rounded up to the next 1/4 cubic yard
what share $42 is of $60
slab lenght by 2
direct cost plus $50 where slab width is more than 100 ft, otherwise $0
16 1/2 in boards
12 by 4 ft
what share $42 is of $60, times 2
thickness is at least 4 in and slab width is under 5 ft
even gap for 13 balusters of 1 1/2 in across 72 in
64 ft in 16 ft boards
posts every 8 ft around 64 ft
joists every 16 in along deck width, neither end
circle area for 12 in diameter
circumference for 6 in radius
triangle area for sides 3 ft, 4 ft and 5 ft
slab length squared
square root of 2
10% of direct cost
half of slab length
average of $10, $20 and $45
55 boards, as pieces
slab length not less than 15 ft
slab length by slab width by thickness, in cubic yards, at $140 per cubic yard
10.8 ft at $3.10 per ft
thickness is between 3 in and 5 in
slab length ÷ 0
-$50
(slab length plus 1 ft) by (slab width minus 6 in)
waste plus 5%
slab length`.split('\n');
const only = process.argv[2];
for (const f of formulas) {
  if (only && !f.includes(only)) continue;
  console.log('=== ' + f);
  try {
    console.log(workingText(workingFor(f)));
  } catch (e) {
    console.log('THREW', (e as Error).stack?.split('\n').slice(0, 6).join('\n'));
  }
}
