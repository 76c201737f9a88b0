/** So many reels, in singular or plural. */
export const reelCount = (count: number): string => `${count} ${count === 1 ? 'reel' : 'reels'}`;
