/** Loaded before the program (`node --import`): at each SIGUSR2 both of its clocks go on by half a minute. Its timers do not. */
let ahead = 0;
const wall = Date.now;
const steady = performance.now.bind(performance);
Date.now = () => wall() + ahead;
performance.now = () => steady() + ahead;
process.on('SIGUSR2', () => {
  ahead += 30_000;
});
