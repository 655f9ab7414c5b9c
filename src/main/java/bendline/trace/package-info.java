/**
 * Follows the grip, the blank, the tip and the rig through the frames. Positions are in the reference picture (the first
 * frame after the camera motion is taken out); each carries a 68 % radius or is "not seen" with a reason.
 *
 * <p>How:
 *
 * <ol>
 *   <li>Every frame is compared with the background's range in a 3 × 3 neighbourhood ({@link bendline.scene.Background}).
 *   <li>A few scouting frames give the places where moving thin lines meet; the hands are where curves of one length lead
 *       out in many directions and, drawn on inwards, meet ({@link bendline.trace.Hands}). A phone that is not square sees the rod longer on one side:
 *       its length goes with its direction ({@link bendline.trace.RodLength}).
 *   <li>In every frame by itself all thin curves out of the pivot are found in log-polar coordinates by a dynamic programme
 *       over radius, direction and slope; each is straightened into a strip and fitted to sub-pixel accuracy.
 *   <li>One curve a frame is chosen over all frames at once; curves that show gaps, kink for one frame or lead into the
 *       ground are dropped and looked for again where their neighbours in time say.
 *   <li>What is short in the picture and only sways, as a reed does, is no rod ({@link bendline.trace.Sway}).
 *   <li>Where the rod was missed in some of the frames looked at first, every third or so, the background is made anew from frames
 *       in which it was surely found elsewhere, and all frames are looked at ({@link bendline.trace.Uncovered}): a rod that waits in one place for most
 *       of a clip is else part of the background there.
 *   <li>The tip is where the blank ends on its own line, in the ring there; the rod's one length and the hands' smooth way put back tips that
 *       were cut short, and tell which are hidden ({@link bendline.trace.HiddenTips}). What the frames about one foretell of its
 *       tip along the rod, by the hands' way and the rod's length, is weighed with what it shows itself
 *       ({@link bendline.trace.TipAnchor}, {@link bendline.trace.Foretold}).
 *   <li>A faint outer end, or something faint that goes on from there, is a painted tip where it is of one length in all
 *       directions; else it is rather line, and the tip where it begins ({@link bendline.trace.FaintEnd}, {@link bendline.trace.Paint}).
 *   <li>Where a curve turns from darker than what lies behind it to brighter, or back, a tip's paint begins, or the line
 *       ({@link bendline.trace.Turnover}). Paint is as long in every frame, so that where it begins tells where the tip is, though that
 *       does not show itself or line runs on from it; which of the two ends is right is told with the hands' way, too. Of a rod that turns
 *       often and at no one length from its end the turn is the tip itself, and what lies beyond is line.
 *   <li>Beyond every curve's end the picture is asked how likely the blank goes on, fainter still, by how much more shows there than
 *       beside it; that is weighed with the hands' way over all frames ({@link bendline.trace.GoesOn}, {@link bendline.trace.HiddenTips}).
 *   <li>Frames whose curve was not sure, or without its tip, are asked again where their neighbours, put right by now, expect it
 *       ({@link bendline.trace.Regained}).
 *   <li>So are points along the blank, across it, with what the frames just before and after foretell of them
 *       ({@link bendline.trace.SmoothSwing}).
 *   <li>Once the caster's body was followed, the rod is as long as from the fist on it to the tip ({@link bendline.trace.HeldLength});
 *       a curve that the hand there can't hold gives way to one that it can, which is looked for once more out of that hand and no
 *       farther than the rod reaches ({@link bendline.trace.HandSearch}, {@link bendline.trace.OtherFist}); tips cut short for long, which the rod alone can't tell, are put where
 *       hand and length say ({@link bendline.trace.Grasp}, {@link bendline.trace.HandPath}).
 *   <li>A corner in a curve is where line leaves the tip; what lies beyond is cut off ({@link bendline.trace.Corner}).
 *   <li>The rig is the compact thing that keeps to the drop's circle round the tip until it flies. Things beyond which the line from
 *       the tip goes on are pieces of that line; where the rig can't be told from what lies behind it but its line can, and
 *       is tight, the rig is at the line's end ({@link bendline.trace.TipLine}, {@link bendline.trace.RigFinder}). Places that a rig can't have
 *       got to from those before and after are taken out again ({@link bendline.trace.RigRuns}). One that is reeled in before a further cast is
 *       followed backwards from its drop, at a reel's pace ({@link bendline.trace.ReeledIn}). Where it was missed for a few frames it is looked for
 *       once more where those about them say ({@link bendline.trace.RigAgain}).
 *   <li>Marks check the rod that was found, or start a follower that needs no background: between them a line of one
 *       contrast is looked for, and from frame to frame, in the pictures as they were taken, where it has shifted, turned and
 *       bent to; where it ends at tip and hand is weighed between what was known and what the contrast says
 *       ({@link bendline.trace.LineSearch}, {@link bendline.trace.LineEnd}, {@link bendline.trace.MarkFollower}).
 * </ol>
 *
 * <p>Tried and dropped, with what it cost on seven rendered clips: the plain difference from the median, instead of the
 * neighbourhood's range, left the blank 0.4 to 0.8 px off across and lost it in foliage (now 0.15 to 0.3 px); an affine
 * camera left up to 3 px at the corners; a fixed threshold on the ridge instead of the frame's own clutter let curves run
 * through clouds; fitting up to the hands bent the direction at the grip by 10° (now 1° in the median); a bump of the hand
 * in the mean ridge strength was 11 % wrong for the grip; looking for the rod's ends with its whole length was fooled by
 * legs.
 *
 * <p>One background from all frames lost the rod in half of the frames of a clip with two casts in which it rests in the same
 * place before, between and after them (now 4 %).
 *
 * <p>For the tip, on eight clips dealt with another seed than the benchmark's and six of the second simulator: the place with the
 * most directions, wherever its curves
 * meet, was beside the hands in three of them and lost the blank in 35, 18 and 100 % of the frames (now 10, 3 and 0 %). Drawing the
 * hand on from what was fitted next to it, instead of from the stiff part farther out, told missing tips where none were (15 % of
 * the frames of one clip). A price for a missing piece by the second instead of by the frame moved the whole clip's tips by a hand's
 * breadth (seen and right in 75 % of the frames of one clip instead of 94 %). Putting tips where the rig's drop says did as much
 * harm as good: seen from beside, the drop looks a tenth shorter when the line swings towards the camera. Calling tips seen only from
 * 84 % of the blank on, instead of 70 %, missed 12 % of one clip's for nothing.
 *
 * <p>Line that runs on from the tip and shows, on five clips dealt with another seed than the benchmark's: rod and line were followed as
 * one curve, found too long and dropped, or the rod's length was taken from them; tips lost or wrong in 6, 9, 36, 39 and 100 % of their
 * frames, now in 5, 10, 7, 30 and 10 %. Believing in curves whose outer end is vague, as hand and length could tell it, showed more tips but
 * more wrong ones too (10 % of the frames became 21 % on one clip); with that, it was 10, 12, 19, 32 and 28 % without corners and 8, 13, 9,
 * 26 and 8 % with them.
 *
 * <p>Painted tips and faint line, on six clips dealt with four other seeds than the benchmark's, in which one or the other was taken for the
 * other: of the tips called seen 15.0, 8.6, 3.1, 18.8, 5.1 and 6.0 % were more than 20 pixels off, now 0.8, 0, 0.8, 7.0, 4.2 and 0 %. A
 * level of strength that suits both could not be found: beside a blank of 30 noise units paint shows as 4 to 8 of them before a bright
 * sky, beside paint of 15 to 35 before trees line shows as 3 to 5. Weighing faint ends where nobody's hand is known, too, cut white tips
 * before white clouds (lost or wrong on one clip 32 and 50 % of them instead of 28 %).
 *
 * <p>What goes on fainter still, on eleven clips dealt with other seeds than the benchmark's and the second simulator's seven: before, 12.8 %
 * of the tips in view were lost or wrong and 5.8 % of those called seen more than 20 pixels off; with what goes on weighed softly and frames regained, 6.0
 * and 1.6 %; with the hand drawn on from what was fitted only, 5.4 and 1.5 %; with whole curves instead of those whose tip was hidden, asked for
 * twice, 3.9 and 1.1 %. How much a faint end speaks against its being line (half to twice as much), how much fainter it may be and how sure
 * it has to be changed these by less than 0.1 %. Replacing curves that are sure but lie elsewhere than their neighbours expect made it worse
 * (4.0 and 1.2 %): where several in a row are wrong, so is what they expect.
 *
 * <p>The rig, on 21 clips dealt with two other seeds than the benchmark's (8,377 frames before the release): without looking at the line 89.7 % seen,
 * of these 2.9 % more than 20 pixels off; with it 92.4 and 0.7 %. Before trees a dark rig shows now at its upper end, now at its lower one;
 * putting it on the drop's circle whenever it is faint made that better on four clips and worse on five, whose line was slack or whose drop
 * was seen askew, and was dropped.
 *
 * <p>Between two casts, on six clips dealt with three other seeds than the benchmark's: 76.9 % of the rigs in view were seen without looking for one
 * that is reeled in, 82.1 % with it (how evenly it is taken to move was set on a clip of the benchmark's), and the rig called seen in 2 of 1,831 frames without one, as before. Taking the nearest thing below the tip without
 * holding it to a reel's pace followed the head of a reed instead. Taking the end of the line where no rig shows added nothing on four of them: in
 * dark water before dark trees neither lasts for long enough. Looking once more, with half the strength, where the frames about one say: 83.7 %, and on the second simulator's clips 85.4 instead of 82.3 % (95 % of
 * the errors 2.3 instead of 1.9 px); with at most three things of any kind about the place instead of six 83.2 %.
 *
 * <p>From marks, on 44 labelled frames of real footage, some of them from two marks: following in the first frame's picture lost
 * the rod where the camera had panned off it, and letting the line slide along itself as far as across made it run away; 37 of 44
 * then, all 44 now.
 *
 * <p>A hint from people's hands for where the rod is held (the middle place of the higher wrist of everybody whose wrists are near
 * each other, from the body's networks in eight or nine scouting frames, as one more place to judge by its curves) never led to a better
 * place on five clips. On two rendered ones it lay 47 and 33 px from the true grip in the middle, what was found without it 61 and 35; its
 * curves scored 11.4 against 13.9, and 7.3 against 6.7 but 8.9 against 9.4 once both had moved to where their curves meet. On three
 * filmed ones its places scored 0.23 against 1.27 (two anglers in a boat), 0.85 against 5.16 (a swung club) and, where nobody holds a rod,
 * won with two short curves. It cost more than all scouting of curves. Not measured on clips on which no place is found without it.
 *
 * <p>Where the time goes, and what would save more of it, is told in DEVELOPERS.md.
 *
 * <p>Whoever makes it faster: the search has many equal bests, and what chooses among them moves pivot and length. Rings summed in floats instead of
 * doubles changed one clip's tips lost or wrong from 0 to 1.1 %; with two pixels in ten thousand rounded otherwise, another clip's pivot was
 * lost. What is meant to change nothing has to change not a bit.
 *
 * <p>Known weakness: a tip that looks like the sky, in colour too, and a blank of the foliage's own look are cut short; line that runs out
 * straight on from the tip can be taken for more of the rod where the hand is not known; where nobody could be followed, the handle below the upper
 * hand makes the rod look longer than it is from hand to tip; laid far back behind the head, a drawn figure's hand was seen a
 * fist's breadth off, so that tips cut there stayed cut.
 */
@NullMarked
package bendline.trace;

import org.jspecify.annotations.NullMarked;
