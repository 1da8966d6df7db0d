package org.lensward.bench;

import static org.lensward.lens.stock.Stocks.EAST;
import static org.lensward.lens.stock.Stocks.NORTH;
import static org.lensward.lens.stock.Stocks.SOUTH;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.lensward.finding.Evidence;
import org.lensward.lens.KitRole;
import org.lensward.lens.stock.LensNeed;
import org.lensward.lens.stock.LensUnit;
import org.lensward.lens.stock.Owner;
import org.lensward.lens.stock.StockPolicy;
import org.lensward.lens.stock.Stocks;
import org.lensward.lens.stock.UnitState;
import org.lensward.quantity.Dioptres;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** A week of 1,000 operations with a kit of four each, and 20,000 cartons at three sites; the dice are loaded. */
@State(Scope.Thread)
public class Bank {

    private static final List<String> SITES = List.of(NORTH, SOUTH, EAST);
    private static final Owner OWNER = new Owner("Organization/hospital", false);
    private static final int BOOKINGS = 1_000;
    private static final int CARTONS = 20_000;

    /** Powers as eyes need them, or every lens of one model and power: the largest single problem there can be. */
    @Param({"usual", "onePower"})
    String powers = "usual";

    StockPolicy policy = Stocks.policy();
    List<LensNeed> needs = List.of();
    List<LensUnit> units = List.of();

    @Setup
    public void fill() {
        Random dice = new Random(1);
        needs = new ArrayList<>();
        units = new ArrayList<>();
        for (int booking = 0; booking < BOOKINGS; booking++) {
            Dioptres power = power(dice, 2);
            Dioptres chamber = power(dice, 2);
            String model = model("bag", dice.nextInt(3));
            String site = SITES.get(dice.nextInt(3));
            int day = 1 + dice.nextInt(5);
            need(booking, KitRole.PRIMARY, model, power, day, site);
            need(booking, KitRole.SPARE, model, power, day, site);
            need(booking, KitRole.SULCUS, model("sulcus", 0), power, day, site);
            need(booking, KitRole.ANTERIOR_CHAMBER, model("chamber", 0), chamber, day, site);
        }
        for (int carton = 0; carton < CARTONS; carton++) {
            int kind = dice.nextInt(5);
            String model = kind < 3 ? model("bag", kind) : model(kind == 3 ? "sulcus" : "chamber", 0);
            unit(carton, model, power(dice, 4), dice);
        }
    }

    private String model(String site, int index) {
        return powers.equals("usual") ? "DeviceDefinition/" + site + index : "DeviceDefinition/one";
    }

    /** In half dioptres about 21 D. */
    private Dioptres power(Random dice, double spread) {
        return Dioptres.of(powers.equals("usual") ? Math.rint(2 * (21 + spread * dice.nextGaussian())) / 2 : 21);
    }

    private void need(int booking, KitRole role, String model, Dioptres power, int day, String site) {
        needs.add(new LensNeed(
                "ServiceRequest/b" + booking, role, model, power, Optional.empty(), Stocks.TODAY.plusDays(day), site));
    }

    private void unit(int carton, String model, Dioptres power, Random dice) {
        boolean held = dice.nextInt(20) == 0;
        units.add(new LensUnit(
                new Evidence("Device/" + carton, "1", ""),
                model,
                power,
                Optional.empty(),
                new LensUnit.Identity(
                        "00000000000000",
                        Optional.empty(),
                        Optional.empty(),
                        Stocks.TODAY.plusDays(dice.nextInt(1_500) - 10L)),
                SITES.get(dice.nextInt(3)),
                OWNER,
                held ? UnitState.RESERVED : UnitState.AVAILABLE,
                held ? Optional.of("ServiceRequest/b" + dice.nextInt(BOOKINGS)) : Optional.empty()));
    }
}
