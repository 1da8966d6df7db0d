package org.lensward.optics;

import org.lensward.quantity.Dioptres;
import org.lensward.quantity.Millimetres;

/**
 * The eye with a thick cornea and a thick lens, traced by paraxial rays: an independent check of the thin formulas, and what they mean.
 * Measured between principal planes it <em>is</em> a {@link ThinEye}; see {@link #thin()}. Not modelled: asphericity, gradient index.
 *
 * @param cornea between air and aqueous
 * @param chamber from the back of the cornea to the front of the lens
 * @param implant in aqueous
 * @param vitreous from the back of the lens to the retina
 */
public record ThickEye(ThickCornea cornea, Millimetres chamber, ThickImplant implant, Millimetres vitreous) {

    private static final double N = ThinEye.INDEX.value();
    private static final double VERTEX = ThinEye.VERTEX_DISTANCE.value() / 1000;

    /**
     * The thick eye behind a formula's thin one: a cornea of Gullstrand's proportions on the measured front, the implant's first
     * principal plane where the formula put the lens, the retina at the measured axial length.
     *
     * @param shape the eye's measurements
     * @param thin the same eye as a formula sees it
     * @param implant the lens
     */
    public static ThickEye behind(EyeShape shape, ThinEye thin, ThickImplant implant) {
        ThickCornea cornea = ThickCornea.ofFront(shape.cornealRadius());
        Millimetres chamber = thin.lensPosition()
                .plus(cornea.planes().back())
                .minus(implant.planes().front());
        Millimetres vitreous =
                shape.axialLength().minus(cornea.thickness()).minus(chamber).minus(implant.thickness());
        return new ThickEye(cornea, chamber, implant, vitreous);
    }

    /**
     * The refraction at a spectacle plane 12 mm before the cornea's first principal plane, by tracing the ray that ends on the retina.
     * That plane lies 0.05 mm before the corneal vertex.
     */
    public Dioptres refraction() {
        ParaxialSystem toRetina = cornea.surfaces()
                .transfer()
                .travel(chamber.value() / 1000 / N)
                .then(implant.surfaces().transfer())
                .travel(vitreous.value() / 1000 / N);
        double atVertex = toRetina.a() / toRetina.b();
        double beforeVertex = -cornea.planes().front().value() / 1000;
        double atPlane = atVertex / (1 + beforeVertex * atVertex);
        return Dioptres.of(atPlane / (1 + VERTEX * atPlane));
    }

    /** The thin eye of the same optics, its distances measured between principal planes. */
    public ThinEye thin() {
        PrincipalPlanes front = cornea.planes();
        PrincipalPlanes lens = implant.planes();
        Millimetres lensPosition = chamber.minus(front.back()).plus(lens.front());
        Millimetres behindLens = vitreous.minus(lens.back());
        return new ThinEye(lensPosition, lensPosition.plus(behindLens), front.power());
    }
}
