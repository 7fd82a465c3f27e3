/**
 * The rig file to {@link io.rowledger.rig.Rig}: lengths, bands, meters, products, job, and hints on logs and maps.
 *
 * <p>Bands lie side by side, outlet i as wide as its share kᵢ times the row spacing w, centered on the bar: the left edge
 * of the bar is −½·w·Σkⱼ. Knives stand w apart, so an outside knife stands (k − ½)·w in from the outer edge of its band.
 * By hand, four rows at 30 in with outside shares of ½: Σk = 3, the bar reaches from −1.143 m to 1.143 m, the first band
 * from −1.143 m to −0.762 m, its knife on the outer edge at −1.143 m, where the next pass meets it.
 *
 * <p>For other packages: {@link Rig}, {@link RigReader}, {@link RigFile}, {@link BarLengths}, {@link Hitch}, {@link Band},
 * {@link Product}, {@link Job}, {@link Amount}, {@link Credit}, {@link EarlierApplication}, {@link LoadTicket},
 * {@link Price}, {@link FileHints}, {@link PrescriptionColumns}, {@link RigCorrection}, {@link DraftRig}.
 */
@NullMarked
package io.rowledger.rig;

import org.jspecify.annotations.NullMarked;
