package org.seamtally.wire;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.seamtally.frame.JointEstimate;
import org.seamtally.frame.WelderSettings;
import org.seamtally.gas.BackPurge;
import org.seamtally.preheat.PreheatPlan;
import org.seamtally.quantity.Dimension;
import org.seamtally.seam.DepositSection;
import org.seamtally.seam.Member;

/** What is set at one joint. */
@Schema(description = "The parts of one joint and what is set and picked up to weld it, defaults filled in.")
@JsonInclude(JsonInclude.Include.NON_NULL)
public record SettingsAnswer(
        @Schema(description = "The parts joined, the branch, sleeve or upper plate first.", required = true)
        List<JointPart> parts,

        @Schema(description = "Name of the base steel.", required = true, examples = "4130")
        String steel,

        @Schema(description = "The fillet asked for; absent for a plug.")
        FilletSetting fillet,

        @Schema(description = "The rod.", required = true) RodSetting filler,

        @Schema(description = "The gas at the torch.", required = true)
        GasSetting gas,

        @Schema(description = "Gas through the tube; absent where none is asked for.")
        PurgeSetting backPurge,

        @Schema(description = "Preheat; absent where there is none.")
        PreheatSetting preheat) {

    /** One of the parts. */
    @Schema(description = "A tube, or a plate where there is no outside diameter.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record JointPart(
            @Schema(description = "Absent for a plate.") Quantity outsideDiameter,

            @Schema(description = "A tube's wall or a plate's thickness.", required = true)
            Quantity wall) {

        static JointPart of(Member member, Shown shown) {
            return new JointPart(
                    member instanceof Member.Tube tube ? shown.length(tube.outsideDiameter()) : null,
                    shown.length(member.wall()));
        }
    }

    /** A fillet as asked for. */
    @Schema(description = "A fillet as asked for.")
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record FilletSetting(
            @Schema(description = "Length of both legs, along the surfaces.", required = true)
            Quantity leg,

            @Schema(description = "Form of the face.", required = true, examples = "flat")
            String face,

            @Schema(description = "Convexity or concavity over face width; absent where flat.")
            Double rise,

            @Schema(description = "Gap at the root.", required = true)
            Quantity rootGap) {

        static FilletSetting of(DepositSection section, Shown shown) {
            return new FilletSetting(
                    shown.length(section.legMain()),
                    section.face().form().word(),
                    section.face().rise() > 0 ? Shown.number(section.face().rise()) : null,
                    shown.length(section.rootGap()));
        }
    }

    /** A rod. */
    @Schema(description = "A rod.")
    public record RodSetting(
            @Schema(description = "Its classification.", required = true, examples = "ER70S-2")
            String classification,

            @Schema(description = "Its diameter.", required = true)
            Quantity diameter) {}

    /** Gas at the torch. */
    @Schema(description = "Gas at the torch.")
    public record GasSetting(
            @Schema(description = "What flows.", required = true, examples = "argon")
            String mixture,

            @Schema(description = "Flow at the reference state.", required = true)
            Quantity flow,

            @Schema(description = "Inside diameter of the gas nozzle.", required = true)
            Quantity nozzleDiameter,

            @Schema(description = "Time before each arc.", required = true)
            Quantity preFlow,

            @Schema(description = "Time after each arc.", required = true)
            Quantity postFlow) {}

    /** Gas through the tube. */
    @Schema(description = "Gas through the tube.")
    public record PurgeSetting(
            @Schema(description = "Flow at the reference state.", required = true)
            Quantity flow,

            @Schema(description = "Time purged before the arc starts.", required = true)
            Quantity time) {

        static PurgeSetting of(BackPurge purge, Shown shown) {
            return new PurgeSetting(shown.flow(purge.flow()), shown.time(purge.purgeTime()));
        }
    }

    /** Preheat. */
    @Schema(description = "Preheat as it is to be done.")
    public record PreheatSetting(
            @Schema(description = "Temperature.", required = true)
            Quantity temperature,

            @Schema(description = "Width heated beyond the joint.", required = true)
            Quantity zone,

            @Schema(description = "Time kept at temperature.", required = true)
            Quantity hold,

            @Schema(description = "Fuel or electricity.", required = true, examples = "propane")
            String source) {

        static PreheatSetting of(PreheatPlan plan, Shown shown) {
            return new PreheatSetting(
                    shown.temperature(plan.temperature()),
                    shown.length(plan.zone()),
                    shown.time(plan.hold()),
                    plan.source().name());
        }
    }

    static SettingsAnswer of(JointEstimate joint, Shown shown) {
        WelderSettings welder = joint.welder();
        return new SettingsAnswer(
                joint.joint().members().stream()
                        .map(member -> JointPart.of(member, shown))
                        .toList(),
                welder.base(),
                joint.joint()
                        .section()
                        .map(section -> FilletSetting.of(section, shown))
                        .orElse(null),
                new RodSetting(welder.filler(), shown.length(welder.rodDiameter())),
                new GasSetting(
                        welder.gas(),
                        shown.flow(welder.flow()),
                        shown.of(Dimension.LENGTH, welder.nozzleDiameter()),
                        shown.time(welder.times().preFlow()),
                        shown.time(welder.times().postFlow())),
                welder.backPurge().map(purge -> PurgeSetting.of(purge, shown)).orElse(null),
                welder.preheat().map(plan -> PreheatSetting.of(plan, shown)).orElse(null));
    }
}
