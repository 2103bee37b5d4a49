// Makes the page handier: one sheet at a time, arrangements, theme, keys. Without it everything is still there to read.
(() => {
  const root = document.documentElement;
  const controls = document.querySelector('.controls');
  controls.hidden = false;
  root.dataset.arrangement = 'home';

  const toggle = (button, on) => button.setAttribute('aria-pressed', String(on));
  controls.addEventListener('click', (event) => {
    const button = event.target.closest('button');
    if (button === null) return;
    if (button.dataset.control === 'arrangement') {
      const orbits = root.dataset.arrangement === 'home';
      root.dataset.arrangement = orbits ? 'orbits' : 'home';
      toggle(button, orbits);
    } else if (button.dataset.control === 'theme') {
      const dark = root.dataset.theme === undefined ? !matchMedia('(prefers-color-scheme: dark)').matches : root.dataset.theme !== 'dark';
      root.dataset.theme = dark ? 'dark' : 'light';
      toggle(button, dark);
    } else {
      print();
    }
  });

  for (const section of document.querySelectorAll('section.eva')) {
    const sheets = [...section.querySelectorAll('.sheet')];
    const marks = [...section.querySelectorAll('a.work')];
    const select = (stint, focus) => {
      for (const sheet of sheets) {
        const chosen = sheet.dataset.stint === stint;
        sheet.hidden = !chosen;
        sheet.classList.toggle('selected', chosen);
        if (chosen && focus) sheet.focus({ preventScroll: innerWidth > 1100 });
      }
      for (const mark of marks) mark.classList.toggle('selected', mark.dataset.stint === stint);
    };
    section.addEventListener('click', (event) => {
      const link = event.target.closest('a[href^="#sheet-"]');
      if (link === null) return;
      event.preventDefault();
      const sheet = document.getElementById(link.getAttribute('href').slice(1));
      if (sheet !== null) select(sheet.dataset.stint, true);
    });
    // Left and right walk the stints in order of time while a mark has the focus.
    section.addEventListener('keydown', (event) => {
      if (event.key !== 'ArrowRight' && event.key !== 'ArrowLeft') return;
      const current = event.target.closest('a.work');
      if (current === null) return;
      event.preventDefault();
      const shown = marks.filter((mark) => mark.closest('.arrangement') === current.closest('.arrangement'));
      const next = shown[shown.indexOf(current) + (event.key === 'ArrowRight' ? 1 : -1)];
      if (next !== undefined) {
        next.focus();
        select(next.dataset.stint, false);
      }
    });
    if (sheets.length > 0) select(sheets[0].dataset.stint, false);
  }

  // A print shows every sheet.
  let hidden = [];
  addEventListener('beforeprint', () => {
    hidden = [...document.querySelectorAll('.sheet[hidden]')];
    for (const sheet of hidden) sheet.hidden = false;
    for (const details of document.querySelectorAll('details')) details.open = true;
  });
  addEventListener('afterprint', () => {
    for (const sheet of hidden) sheet.hidden = true;
  });
})();
