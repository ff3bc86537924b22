-- wrk sends the lines of the file that BODIES names, each as the body of one request, from the line FROM on.
local bodies = {}
local at = 0

function init()
    for line in io.lines(os.getenv("BODIES")) do
        bodies[#bodies + 1] = line
    end
    at = tonumber(os.getenv("FROM")) % #bodies
    wrk.method = "POST"
    wrk.headers["Content-Type"] = "application/json"
end

function request()
    at = at % #bodies + 1
    return wrk.format(nil, nil, nil, bodies[at])
end

function done(summary)
    local errors = summary.errors
    print(string.format("requests %d refused %d failed %d microseconds %d", summary.requests, errors.status,
        errors.connect + errors.read + errors.write + errors.timeout, summary.duration))
end
