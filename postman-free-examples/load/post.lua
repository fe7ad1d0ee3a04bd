-- For wrk: posts the file named by PLAN, counts the answers by status.
local file = assert(io.open(os.getenv("PLAN"), "rb"))
wrk.method = "POST"
wrk.headers["Content-Type"] = "application/json"
wrk.body = file:read("*a")
file:close()

local threads = {}
function setup(thread)
    table.insert(threads, thread)
end

function init()
    counts = {}
end

function response(status)
    counts[status] = (counts[status] or 0) + 1
end

function done(summary, latency)
    local total = {}
    for _, thread in ipairs(threads) do
        for status, count in pairs(thread:get("counts")) do
            total[status] = (total[status] or 0) + count
        end
    end
    local statuses = ""
    for status, count in pairs(total) do
        statuses = statuses .. string.format(" %d:%d", status, count)
    end
    local failed = summary.errors.connect + summary.errors.read + summary.errors.write + summary.errors.timeout
    print(string.format(
        "result %7.1f/s  median %.2f ms  p99 %.2f ms  statuses%s  failed %d",
        summary.requests * 1e6 / summary.duration,
        latency:percentile(50) / 1000,
        latency:percentile(99) / 1000,
        statuses,
        failed))
end
