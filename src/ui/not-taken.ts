// Why a notebook that was asked for is not opened.

export function notTaken(why: 'newer' | 'unreadable' | 'absent'): string {
  switch (why) {
    case 'newer':
      return 'That notebook was kept by a later version of this page. It is left as it is; reload to get the later version.';
    case 'unreadable':
      return 'What was kept of that notebook can’t be read here. It is left as it is.';
    case 'absent':
      return 'That notebook is no longer kept in this browser.';
  }
}
